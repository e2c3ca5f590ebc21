/** What the checks of waves share. */
export const WAVES =
  'Shore Protection Manual 1984 eqs. 3-39 and 3-40; crest and breaking by ASCE 7-16 5.4.4 (from memory)'
