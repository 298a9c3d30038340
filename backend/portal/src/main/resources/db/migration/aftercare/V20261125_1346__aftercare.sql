create schema aftercare;

-- Houses in care. A place is what is reached in one trip; it has a usual weekday.
create table aftercare.place (
    name text primary key,
    weekday int not null check (weekday between 1 and 7)
);
create table aftercare.care (
    house varchar(16) primary key references houserecord.house (id),
    place text not null references aftercare.place (name),
    handed_over_on date
);

-- The clean drops are those of the clean mark in force; older marks stay in clean_mark.
create table aftercare.filter (
    house varchar(16) not null references aftercare.care (house),
    id text not null,
    in_house text not null,
    size text not null,
    count int not null check (count > 0),
    grade text not null,
    shelf_place text,
    fitted_on date not null,
    design_high_pa double precision not null,
    design_low_pa double precision not null,
    clean_high_pa double precision not null,
    clean_low_pa double precision not null,
    high_flow_m3_per_s double precision not null,
    low_flow_m3_per_s double precision not null,
    free_static_pa double precision,
    drop_sensor text,
    flow_sensor text,
    version bigint not null default 0,
    primary key (house, id)
);
create table aftercare.clean_mark (
    house varchar(16) not null,
    filter text not null,
    marked_on date not null,
    high_pa double precision not null,
    low_pa double precision not null,
    primary key (house, filter, marked_on),
    foreign key (house, filter) references aftercare.filter (house, id)
);
create table aftercare.load_sample (
    house varchar(16) not null,
    filter text not null,
    taken_on date not null,
    load double precision not null,
    source text not null,
    primary key (house, filter, taken_on),
    foreign key (house, filter) references aftercare.filter (house, id)
);

-- What happened in a house and may explain a reading: sanding, smoke, guests.
create table aftercare.house_event (
    id uuid primary key,
    house varchar(16) not null references aftercare.care (house),
    on_from date not null,
    on_to date not null check (on_to >= on_from),
    what text not null
);

-- Somebody of the firm is at a place anyway.
create table aftercare.trip (
    place text not null references aftercare.place (name),
    on_day date not null,
    why text not null,
    primary key (place, on_day)
);

create table aftercare.round (
    id uuid primary key,
    place text not null references aftercare.place (name),
    on_day date not null,
    made_by text not null
);
create table aftercare.visit (
    id uuid primary key,
    house varchar(16) not null references aftercare.care (house),
    kind text not null,
    due_on date not null,
    planned_on date,
    round uuid references aftercare.round (id),
    filters text[] not null default '{}',
    closed_on date,
    closing jsonb,
    version bigint not null default 0
);
create index visit_open on aftercare.visit (due_on) where closed_on is null;

create table aftercare.stock (
    size text not null,
    grade text not null,
    shelf_place text,
    on_shelf int not null check (on_shelf >= 0),
    version bigint not null default 0,
    primary key (size, grade)
);
