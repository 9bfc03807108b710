/** What glazes the measured glasses speak of, in a potter's words. @module */

/** Said where nothing can be: what a glaze has to be like to be judged, and what to look for. */
export const KNOWN_GLAZES =
  "Glazes I know hold 40 to 85 mol % silica with a few per cent of alumina and at least 5 mol % of fluxes. Check the recipe for a missing line.";
