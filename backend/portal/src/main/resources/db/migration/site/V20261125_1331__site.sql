create schema site;

-- A cover check of one house, made from a template; its rows keep the words they had that day.
create table site.cover_check (
    house_id varchar(16) not null references houserecord.house (id),
    code varchar(8) not null,
    title text not null,
    covered_by text not null,
    depends_on text[] not null,
    cautions text[] not null,
    made_by text not null,
    made_at timestamptz not null,
    primary key (house_id, code)
);

create table site.cover_check_row (
    house_id varchar(16) not null,
    code varchar(8) not null,
    id varchar(80) not null,
    template_row varchar(20) not null,
    place varchar(60),
    position int not null,
    look_at text not null,
    accept_when text not null,
    because text not null,
    quantity text,
    unit text,
    limit_min double precision,
    limit_max double precision,
    lowest double precision,
    highest double precision,
    photo_rule text not null,
    seen_by text[] not null,
    signed_by text not null,
    source text not null,
    primary key (house_id, code, id),
    foreign key (house_id, code) references site.cover_check (house_id, code)
);

create table site.photo (
    id uuid primary key,
    house_id varchar(16) not null references houserecord.house (id),
    place text not null,
    card text not null,
    sent_sha256 char(64) not null,
    taken_at timestamptz not null,
    received_at timestamptz not null,
    person_id uuid not null,
    person text not null,
    width_px int not null,
    height_px int not null,
    image bytea not null,
    thumbnail bytea not null
);
create index photo_house on site.photo (house_id, taken_at);

-- Append only: an answer is never changed; a later look is another answer of a later round.
create table site.row_answer (
    id uuid primary key,
    house_id varchar(16) not null,
    code varchar(8) not null,
    row_id varchar(80) not null,
    round int not null,
    answer text not null,
    judged text not null,
    value double precision,
    note text not null,
    repeat_of uuid references site.row_answer (id),
    -- what the device said, and when it reached the portal
    taken_at timestamptz not null,
    received_at timestamptz not null,
    person_id uuid not null,
    person text not null,
    foreign key (house_id, code, row_id) references site.cover_check_row (house_id, code, id)
);
create index row_answer_row on site.row_answer (house_id, code, row_id);

create table site.row_answer_photo (
    answer_id uuid not null references site.row_answer (id),
    photo_id uuid not null references site.photo (id),
    position int not null,
    primary key (answer_id, photo_id)
);

-- The principal lets a row pass as it is.
create table site.row_acceptance (
    answer_id uuid primary key references site.row_answer (id),
    reason text not null,
    person_id uuid not null,
    person text not null,
    at timestamptz not null
);

create table site.cover_check_signature (
    house_id varchar(16) not null,
    code varchar(8) not null,
    role text not null,
    copy_code char(7) not null,
    person_id uuid not null,
    person text not null,
    at timestamptz not null,
    primary key (house_id, code, role, copy_code),
    foreign key (house_id, code) references site.cover_check (house_id, code)
);

create table site.running_clock (
    house_id varchar(16) not null references houserecord.house (id),
    id varchar(40) not null,
    label text not null,
    started_on date not null,
    limit_days int not null check (limit_days > 0),
    limit_source text not null,
    planned_on date,
    stopped_on date,
    version bigint not null,
    primary key (house_id, id)
);

create table site.loose_end (
    id uuid primary key,
    house_id varchar(16) not null references houserecord.house (id),
    title text not null,
    because text not null,
    owner_role text not null,
    due_on date not null,
    origin text not null,
    origin_key text not null,
    wants_after_photo boolean not null,
    opened_by text not null,
    opened_at timestamptz not null,
    closed_by text,
    closed_at timestamptz,
    close_reason text,
    as_left text,
    after_photo uuid references site.photo (id),
    version bigint not null
);
create index loose_end_house on site.loose_end (house_id, due_on);
-- one open loose end for one failed row or one misfit
create unique index loose_end_open on site.loose_end (house_id, origin, origin_key)
    where closed_at is null and origin_key <> '';

-- what somebody saw and signed can never be rewritten, not even by a fault in the portal
create function site.refuse_rewriting() returns trigger language plpgsql as $$
begin
    raise exception '% is append-only', tg_table_name;
end $$;
create trigger append_only before update or delete on site.row_answer
    for each row execute function site.refuse_rewriting();
create trigger append_only before update or delete on site.row_answer_photo
    for each row execute function site.refuse_rewriting();
create trigger append_only before update or delete on site.row_acceptance
    for each row execute function site.refuse_rewriting();
create trigger append_only before update or delete on site.cover_check_signature
    for each row execute function site.refuse_rewriting();
