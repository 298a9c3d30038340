create schema reading;

create table reading.sensor (
    id int generated always as identity primary key,
    house varchar(16) not null references houserecord.house (id),
    key text not null,
    label text not null,
    property text not null,
    room text,
    place text,
    instrument text,
    accuracy double precision,
    sample_interval_s int,
    version bigint not null default 0,
    unique (house, key)
);

-- Columns in this order waste nothing to alignment. No foreign key to the sensor: it would be checked row by row, and
-- sensors are never deleted. Partitions, one a month, are made when the first reading of the month comes.
create table reading.reading (
    at timestamptz not null,
    sensor_id int not null,
    value real not null,
    primary key (sensor_id, at)
) partition by range (at);

-- One row for each sensor and hour (UTC) that has readings; written anew from the readings for every touched hour.
create table reading.hour (
    hour timestamptz not null,
    mean double precision not null,
    sensor_id int not null,
    count int not null,
    min real not null,
    max real not null,
    calculated_at timestamptz not null,
    primary key (sensor_id, hour)
);

create table reading.batch (
    id uuid primary key,
    house varchar(16) not null references houserecord.house (id),
    sent_by text not null,
    committed_at timestamptz not null,
    received bigint not null,
    accepted bigint not null,
    already_known bigint not null,
    refused bigint not null,
    empty bigint not null
);
create index batch_house on reading.batch (house, committed_at);

create table reading.reject (
    batch uuid not null references reading.batch (id),
    number int not null,
    line bigint not null,
    field text not null,
    value text not null,
    reason text not null,
    text text not null,
    primary key (batch, number)
);

create table reading.column_map (
    house varchar(16) not null references houserecord.house (id),
    name text not null,
    map jsonb not null,
    version bigint not null default 0,
    primary key (house, name)
);
