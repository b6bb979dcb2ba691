/** What the rule of levels is called in its findings. */
export const LEVELS = { id: 'levels', title: 'Does the input read what the output says?' } as const;
