/** Times its rated current that an induction motor takes straight on the mains: common practice, no source. */
export const START: readonly [least: number, most: number] = [6, 8];
