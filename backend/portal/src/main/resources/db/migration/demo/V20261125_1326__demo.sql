-- When the demo firm was loaded, so that its clock runs on from there after a restart.
create schema demo;
create table demo.loaded (
    single boolean primary key default true check (single),
    at timestamptz not null,
    -- its readings are taken in after the rest, through the same door as any logger's file
    readings boolean not null default false
);
