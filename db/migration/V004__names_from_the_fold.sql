-- Names and what concerns which adjuster come from the fold of a car; nothing is kept of them here.

drop table car;
drop table adjustment;
