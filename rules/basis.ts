/** What a finding or a reason rests on, where more than one says the same. */

/** What the trade does without having written it down. */
export const COMMON = 'Common practice, no published source'
/** What the shop asks for. */
export const SHOP = "The shop's catalog"
