-- Why: specifications tell apart what they ask, parts say who states that they meet it, offers have tax, deposit and an end, lots an order (version 2 of their entries).
-- Existing rows: each gets what its version 1 is read as (nothing asked or stated, no deposit, no end, no order), each field in its place in the
-- order of canonical JSON. The journal is not touched. Quotation marks inside a text are written \" in JSON, so what is searched for
-- occurs only as the name of a field, which each of these has once.
UPDATE fact SET value = '{"asks":[],"fluid":null,' || substr(replace(value, ',"name":', ',"mix":false,"name":'), 2)
WHERE family = 'specification';
UPDATE fact SET value = substr(replace(value, ',"meets":', ',"keepsOpenedDays":null,"meets":'), 1, length(replace(value, ',"meets":', ',"keepsOpenedDays":null,"meets":')) - 1) || ',"stated":[]}'
WHERE family = 'part';
UPDATE fact SET value = substr(replace(value, ',"id":', ',"depositMinor":0,"id":'), 1, length(replace(value, ',"id":', ',"depositMinor":0,"id":')) - 1) || ',"taxAdded":null,"withdrawnOn":null}'
WHERE family = 'offer';
UPDATE fact SET value = replace(replace(value, ',"openedOn":', ',"keepsOpenedDays":null,"openedOn":'), ',"paidMinor":', ',"order":null,"paidMinor":')
WHERE family = 'lot';
