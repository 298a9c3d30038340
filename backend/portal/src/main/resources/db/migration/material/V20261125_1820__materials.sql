create schema material;

-- The firm's own materials, each under an id that carries its content: what was typed is never changed.
create table material.own (
    id varchar(60) primary key,
    name varchar(47) not null,
    -- the name in small letters and the id
    sort_key text collate "C" not null,
    typed jsonb not null,
    added_by text not null,
    added_at timestamptz not null,
    -- of one name only the last is offered; the others stay readable
    superseded_by varchar(60) references material.own (id) deferrable initially deferred,
    withdrawn_by text,
    withdrawn_at timestamptz,
    check ((withdrawn_by is null) = (withdrawn_at is null))
);
create unique index own_offered on material.own (name) where superseded_by is null and withdrawn_at is null;
create index own_in_list on material.own (sort_key);
create index own_by_name on material.own (name);
