/** Where what several rules rely on is written. */
export const SOURCE = {
  plc: 'IEC 61131-2 as quoted by makers of input modules',
  curve: 'TIA/EIA-422-B, informative curve of length against rate',
} as const;
