/** All rules over one wiring, asked again only as far as an edit reaches. */
import { byVerdict } from '../../quantity/verdict.ts';
import type { Refit, WiringWire } from '../../refit/types.ts';
import { type Drawn, judgeSupply, type PowerAnswer, type Size } from '../power/index.ts';
import {
  type ReadWiring,
  readWiring,
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

const worstFirst = (findings: readonly WiringFinding[]): readonly WiringFinding[] =>
  [...findings].sort(byVerdict);

/** Keeps what the rules saw from one state of a wiring to the next. */
export class WiringLook {
  #checker: WiringChecker | undefined;
  #around: Refit | undefined;
  #supply: PowerAnswer | undefined;
  #drawn: Drawn | undefined;

  /**
   * Things that are the same objects as before are not asked about again by the rules of joining. `drawn` is what the drives
   * take, as far as the rest of the refit tells.
   */
  look(refit: Refit, drawn?: Drawn): Looked {
    const { read, findings } = this.#joined(refit);
    this.#drawn = drawn;
    this.#supply = judgeSupply(refit, read, drawn);
    return together(read, findings, this.#supply);
  }

  /** The same at once: what was said of the supply before stands until it is judged anew. */
  quick(refit: Refit): Looked {
    const { read, findings } = this.#joined(refit);
    return together(read, findings, this.#supply);
  }

  /** What is said with one more wire and not without it; afterwards everything stands as it did. */
  tryWire(refit: Refit, before: Looked, wire: WiringWire): readonly WiringFinding[] {
    const wires = { ...refit.wiring.wires, [wire.id]: wire };
    const withIt = { ...refit, wiring: { ...refit.wiring, wires } };
    const { read, findings } = this.#joined(withIt);
    const after = together(read, findings, judgeSupply(withIt, read, this.#drawn));
    this.#joined(refit);
    const said = new Set(before.findings.map((each) => JSON.stringify(each)));
    return after.findings.filter((each) => !said.has(JSON.stringify(each)));
  }

  #joined(refit: Refit): { readonly read: ReadWiring; readonly findings: readonly WiringFinding[] } {
    this.#around = aroundOf(refit, this.#around);
    if (this.#checker) this.#checker.update(refit.wiring, this.#around);
    else this.#checker = new WiringChecker(refit.wiring, this.#around);
    return { read: readWiring(refit.wiring, refit), findings: this.#checker.findings() };
  }
}

const together = (
  read: ReadWiring,
  joined: readonly WiringFinding[],
  supply: PowerAnswer | undefined,
): Looked => ({
  read,
  findings: worstFirst([...joined, ...(supply?.findings ?? [])]),
  problems: once([...read.problems, ...(supply?.context.problems ?? [])]),
  sizes: supply?.sizes ?? [],
});

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

export const lookThrough = (refit: Refit, drawn?: Drawn): Looked => new WiringLook().look(refit, drawn);
