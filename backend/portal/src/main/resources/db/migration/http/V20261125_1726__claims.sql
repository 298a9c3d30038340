-- Whose the key is while its request is answered, and when the act of that request was committed: a claim that is left
-- without answer is freed only where nothing was done under it.
alter table http.kept_answer
    add column claim uuid not null default gen_random_uuid(),
    add column acted_at timestamptz;
