/** How much a refit and its files may hold: far above any real machine, low enough that no file can exhaust a computer. */
export const LIMITS = {
  /** Characters. */
  text: 2_000,
  name: 120,
  parts: 2_000,
  facts: 200,
  chains: 12,
  places: 60,
  options: 60,
  policies: 300,
  evidence: 2_000,
  tags: 3_000,
  keeps: 200,
  survey: 300,
  stopElements: 120,
  stopWires: 400,
  stopMotions: 12,
  /** Settings of one element, motion or stop circuit. */
  stopSettings: 60,
  work: 300,
  auxiliaries: 60,
  devices: 2_000,
  wires: 8_000,
  cables: 1_000,
  /** Terminals of one device. */
  terminals: 400,
  /** Settings of one piece of work, auxiliary, device, wire, cable or of the whole wiring. */
  settings: 100,
  /** Photos named by one thing. */
  photos: 24,
  /** Names of readings, given values or answers of one thing. */
  columns: 40,
  /** Readings under one name. */
  readings: 5_000,
  /** Characters of one reading. */
  reading: 60,
  changes: 2_000,
  /** Levels of brackets within brackets in a JSON file. */
  depth: 24,
  /** Bytes, once unpacked. */
  refitFile: 5_000_000,
  historyFile: 40_000_000,
  photo: 8_000_000,
  archive: 64_000_000,
  archiveEntries: 1_000,
  /** Unpacked over packed, for entries above a megabyte. */
  expansion: 200,
} as const;
