/** Points a side of the tables that are shown while a control moves. */
export const coarseSize = 17;
