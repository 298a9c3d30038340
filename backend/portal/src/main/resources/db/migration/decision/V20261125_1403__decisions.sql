-- Decisions of a house, what was said about them, and who approved exactly what.
create schema decision;

create table decision.decision (
    house_id varchar(16) not null references houserecord.house (id),
    code varchar(8) not null,
    content text not null,
    version bigint not null,
    made_at timestamptz not null,
    primary key (house_id, code)
);

create table decision.remark (
    id uuid primary key,
    house_id varchar(16) not null,
    code varchar(8) not null,
    said_by uuid not null,
    said_by_name text not null,
    said_at timestamptz not null,
    text text not null,
    foreign key (house_id, code) references decision.decision (house_id, code)
);
create index remark_of on decision.remark (house_id, code, said_at);

create table decision.approval (
    id uuid primary key,
    house_id varchar(16) not null,
    code varchar(8) not null,
    role text not null,
    person_id uuid not null,
    person_name text not null,
    given_at timestamptz not null,
    copy_code text not null,
    -- exactly what was approved; json keeps the order of names
    approved json not null,
    withdrawn_at timestamptz,
    withdrawn_by text,
    withdrawn_reason text,
    foreign key (house_id, code) references decision.decision (house_id, code)
);
create index approval_of on decision.approval (house_id, code, given_at);

-- an approval is withdrawn, never rewritten
create function decision.refuse_rewriting() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' then
        raise exception 'an approval is never deleted';
    end if;
    if (old.id, old.house_id, old.code, old.role, old.person_id, old.person_name, old.given_at, old.copy_code,
            old.approved::text)
        is distinct from
        (new.id, new.house_id, new.code, new.role, new.person_id, new.person_name, new.given_at, new.copy_code,
            new.approved::text)
        or old.withdrawn_at is not null then
        raise exception 'an approval is never rewritten';
    end if;
    return new;
end $$;
create trigger never_rewritten before update or delete on decision.approval
    for each row execute function decision.refuse_rewriting();
