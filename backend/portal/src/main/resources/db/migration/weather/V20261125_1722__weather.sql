create schema weather;

-- Weather of the firm, each under the hash of its content: never changed, never there twice.
create table weather.year (
    hash char(64) primary key,
    place text not null,
    latitude_deg double precision not null,
    longitude_deg double precision not null,
    altitude_m double precision not null,
    standard_offset_h double precision not null,
    source text not null,
    attribution text not null,
    start timestamp not null,
    hours int not null check (hours > 0),
    whole_year boolean not null,
    quantities text[] not null,
    -- the quantities one after another, each as its hours in double precision, big-endian, gzip
    packed bytea not null,
    months jsonb not null,
    notices jsonb not null,
    added_by text not null,
    added_at timestamptz not null
);
create index year_in_list on weather.year ((lower(place) || ' ' || hash) collate "C");

-- How tables of weather are read, each map under its name.
create table weather.table_map (
    name varchar(64) primary key,
    map jsonb not null,
    version bigint not null default 0
);
