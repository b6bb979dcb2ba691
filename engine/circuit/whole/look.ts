/** All rules over one wiring, asked again only as far as an edit reaches. */
import type { Refit } from '../../refit/types.ts';
import { judgeSupply, type Size } from '../power/index.ts';
import {
  type ReadWiring,
  readWiring,
  type Verdict,
  WiringChecker,
  type WiringFinding,
  type WiringProblem,
} from '../wiring/index.ts';

export interface Looked {
  readonly read: ReadWiring;
  /** Worst first. */
  readonly findings: readonly WiringFinding[];
  /** What could not be read, once each. */
  readonly problems: readonly WiringProblem[];
  /** What to buy for the supply. */
  readonly sizes: readonly Size[];
}

const ORDER: readonly Verdict[] = ['fails', 'unknown', 'tight', 'fits'];

const worstFirst = (findings: readonly WiringFinding[]): readonly WiringFinding[] =>
  ORDER.flatMap((verdict) => findings.filter((each) => each.verdict === verdict));

/** Keeps what the rules saw from one state of a wiring to the next. */
export class WiringLook {
  #checker: WiringChecker | undefined;
  #last: { readonly refit: Refit; readonly looked: Looked } | undefined;

  /** Things that are the same objects as before are not asked about again. */
  look(refit: Refit): Looked {
    if (this.#last?.refit === refit) return this.#last.looked;
    if (this.#checker) this.#checker.update(refit.wiring, aroundOf(refit, this.#last?.refit));
    else this.#checker = new WiringChecker(refit.wiring, refit);
    const read = readWiring(refit.wiring, refit);
    const supply = judgeSupply(refit, read);
    const looked: Looked = {
      read,
      findings: worstFirst([...this.#checker.findings(), ...supply.findings]),
      problems: once([...read.problems, ...supply.context.problems]),
      sizes: supply.sizes,
    };
    this.#last = { refit, looked };
    return looked;
  }
}

/** The same object while the parts that devices stand for are the same. */
function aroundOf(refit: Refit, before: Refit | undefined): Refit {
  return before &&
    before.parts === refit.parts &&
    before.places === refit.places &&
    before.chains === refit.chains
    ? before
    : refit;
}

const once = (problems: readonly WiringProblem[]): readonly WiringProblem[] => [
  ...new Map(problems.map((problem) => [`${problem.where} ${problem.message}`, problem])).values(),
];

export const lookThrough = (refit: Refit): Looked => new WiringLook().look(refit);
