-- What is noted for the search goes into its index at once. Put aside first, as such an index does otherwise, it is sorted in by a background process that the
-- embedded database does not have; until then every search reads all of it, or the whole table.
alter index booking_search_grams set (fastupdate = off);
select gin_clean_pending_list('booking_search_grams');
