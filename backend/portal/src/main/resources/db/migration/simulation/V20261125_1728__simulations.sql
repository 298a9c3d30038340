create schema simulation;

-- What was asked of a long run. The job of the same id says how far it is; a result is written once it is there.
create table simulation.run (
    id uuid primary key,
    house varchar(16) not null references houserecord.house (id),
    title text not null,
    calculation varchar(60) not null,
    version varchar(20) not null,
    -- runs that were asked for side by side
    comparison uuid,
    bindings jsonb not null,
    relied jsonb not null,
    -- json and not jsonb: layers stand in the order of their keys, which jsonb does not keep
    inputs json not null,
    revisions jsonb not null,
    asked_by text not null,
    asked_at timestamptz not null
);
create index run_by_house on simulation.run (house, asked_at desc, id);

-- A run that began again after a crash writes its result anew, the same one.
create table simulation.result (
    run uuid primary key references simulation.run (id),
    -- the calculation's answer; null where the run could not go through
    answer jsonb,
    outputs jsonb not null,
    -- where and when it could not go on; null where it went through
    stopped text,
    strip jsonb not null
);

-- One profile a day of the last year, so that a day is read without the others.
create table simulation.profile (
    run uuid not null references simulation.run (id),
    day int not null,
    profile jsonb not null,
    primary key (run, day)
);
