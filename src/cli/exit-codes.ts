/** What a process ends with. */
export const exitCodes = {
  /** Done, and the answer is good. */
  good: 0,
  /** Done, and the answer is 'not good'. */
  notGood: 1,
  /** Input or use that cannot be worked with. */
  unusable: 2,
} as const;
