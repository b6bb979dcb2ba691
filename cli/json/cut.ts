/** A cut as JSON for scripts: values SI and radians, `unit` the one a person reads. */
import type { Cut } from '../../engine/threads/index.ts';

export const cutJson = (cut: Cut) => ({ format: 'fettle-cut', version: 1, ...cut });
