-- Houses, their parts by revision, proofs by issue, and named sets of both.
create schema houserecord;

create table houserecord.house (
    id varchar(16) primary key check (id ~ '^[A-Z][A-Z0-9-]{0,15}$'),
    -- the revision of the part "house" that holds its name, place and measures
    measures_revision int not null,
    version bigint not null,
    made_at timestamptz not null
);

create table houserecord.part_revision (
    house_id varchar(16) not null references houserecord.house (id),
    part text not null,
    revision int not null check (revision > 0),
    document jsonb not null,
    made_by uuid not null,
    made_by_name text not null,
    made_at timestamptz not null,
    reason text not null,
    primary key (house_id, part, revision)
);
create index part_revision_made on houserecord.part_revision (house_id, made_at);

create table houserecord.proof_issue (
    house_id varchar(16) not null references houserecord.house (id),
    key text not null,
    issue int not null check (issue > 0),
    content jsonb not null,
    made_by uuid not null,
    made_by_name text not null,
    made_at timestamptz not null,
    reason text not null,
    primary key (house_id, key, issue)
);
create index proof_issue_made on houserecord.proof_issue (house_id, made_at);

create table houserecord.baseline (
    house_id varchar(16) not null references houserecord.house (id),
    name text not null,
    parts jsonb not null,
    proofs jsonb not null,
    made_by uuid not null,
    made_by_name text not null,
    made_at timestamptz not null,
    reason text not null,
    primary key (house_id, name)
);

-- what an approval rested on can never be rewritten, not even by a fault in the portal
create function houserecord.refuse_rewriting() returns trigger language plpgsql as $$
begin
    raise exception '% is append-only', tg_table_name;
end $$;
create trigger append_only before update or delete on houserecord.part_revision
    for each row execute function houserecord.refuse_rewriting();
create trigger append_only before update or delete on houserecord.proof_issue
    for each row execute function houserecord.refuse_rewriting();
create trigger append_only before update or delete on houserecord.baseline
    for each row execute function houserecord.refuse_rewriting();
