-- What signed filter-drop sheets measured, whether the filter is followed yet or not: the curve of that very filter.
create table aftercare.measured_mark (
    house varchar(16) not null references houserecord.house (id),
    filter text not null,
    measured_at timestamptz not null,
    airflow_m3_per_s double precision not null,
    drop_pa double precision not null,
    linear_pa_s_per_m double precision not null,
    square_pa_s2_per_m2 double precision not null,
    face_area_m2 double precision not null,
    density_kg_per_m3 double precision not null,
    primary key (house, filter, measured_at)
);
