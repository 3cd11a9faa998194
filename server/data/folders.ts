/** What lies in a data folder beside the database. */

/** A folder for each screening, named by its id. */
export const SCREENINGS_FOLDER = 'screenings';

/** Tables that were uploaded and not screened yet. */
export const TABLES_FOLDER = 'tables';

/** Weather files that whoever runs the server put there. */
export const WEATHER_FOLDER = 'weather';

/** In the folder of the screenings; locked by the process that works on them. */
export const HOLD_FILE = 'lock.sqlite';

/** In the folder of a screening; what it was begun with. */
export const TABLE_FILE = 'table.csv';
