-- What failed in the proofs when it was approved, as the approver was shown it, and why it was approved all the same.
alter table decision.approval
    add column exception_reason text,
    add column failing text[] not null default '{}',
    add check (exception_reason is null or cardinality(failing) > 0);

create or replace function decision.refuse_rewriting() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' then
        raise exception 'an approval is never deleted';
    end if;
    if (old.id, old.house_id, old.code, old.role, old.person_id, old.person_name, old.given_at, old.copy_code,
            old.approved::text, old.exception_reason, old.failing)
        is distinct from
        (new.id, new.house_id, new.code, new.role, new.person_id, new.person_name, new.given_at, new.copy_code,
            new.approved::text, new.exception_reason, new.failing)
        or old.withdrawn_at is not null then
        raise exception 'an approval is never rewritten';
    end if;
    return new;
end $$;
