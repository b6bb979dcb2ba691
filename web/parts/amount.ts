/** An amount as a person reads it: no more digits than its doubt leaves. */
import { sayRounded } from '../../engine/assess/words.ts';

export { sayRounded as sayAmount };
