/** All rules over one wiring, asked again only as far as an edit reaches. */
import type { Refit, WiringWire } from '../../refit/types.ts';
import { type Drawn, type Size, SupplyChecker } from '../power/index.ts';
import { type ReadWiring, WiringChecker, type WiringFinding, type WiringProblem } from '../wiring/index.ts';
import { rootsFirst } from './roots.ts';
import { sayUsualHere, usualHere, withoutUsual } from './usual-here.ts';

export interface Looked {
  readonly read: ReadWiring;
  /** What spoils the rest first, then the worst; the rest is judged without the wires that spoil it. */
  readonly findings: readonly WiringFinding[];
  /** What could not be read, once each. */
  readonly problems: readonly WiringProblem[];
  /** What to buy for the supply. */
  readonly sizes: readonly Size[];
  /** What findings rest on that was only taken as usual, in words, by their ids; absent while it was not asked. */
  readonly resting?: Resting;
}

/** 'the usual current of the coil, 40 mA, of K1' by the id of a finding that would be another, or none, without it. */
export type Resting = ReadonlyMap<string, readonly string[]>;

/** Keeps what the rules saw from one state of a wiring to the next. */
export class WiringLook {
  #checker: WiringChecker | undefined;
  #supply: SupplyChecker | undefined;
  #around: Refit | undefined;
  #drawn: Drawn = {};

  /**
   * Things that are the same objects as before are not asked about again.
   *
   * @param drawn what the drives take, as far as the rest of the refit tells; absent: what was told last
   */
  look(refit: Refit, drawn: Drawn = this.#drawn): Looked {
    this.#drawn = drawn;
    const { checker, supply } = this.#take(refit);
    const read = checker.read();
    const problems = once([...read.problems, ...supply.problems]);
    return { read, findings: this.#findings(refit), problems, sizes: supply.sizes() };
  }

  /** What is said with one more wire and not without it; afterwards everything stands as it did. */
  tryWire(refit: Refit, before: Looked, wire: WiringWire): readonly WiringFinding[] {
    const wires = { ...refit.wiring.wires, [wire.id]: wire };
    const tried = { ...refit, wiring: { ...refit.wiring, wires } };
    this.#take(tried);
    const after = this.#findings(tried);
    this.#take(refit);
    // What nobody was asked about again is the same object.
    const [were, are] = [new Set(before.findings), new Set(after)];
    const said = new Set(
      before.findings.filter((each) => !are.has(each)).map((each) => JSON.stringify(each)),
    );
    return after.filter((each) => !were.has(each) && !said.has(JSON.stringify(each)));
  }

  /** What rests on values that nobody has looked at: each is left out once. Afterwards everything stands as it did. */
  resting(refit: Refit): Resting {
    const resting = new Map<string, string[]>();
    const taken = usualHere(refit);
    if (taken.length === 0) return resting;
    this.#take(refit);
    const findings = this.#findings(refit);
    for (const group of taken) {
      const unsaid = { ...refit, wiring: withoutUsual(refit.wiring, group) };
      this.#take(unsaid);
      const without = new Map(this.#findings(unsaid).map((each) => [each.id, each]));
      for (const each of findings) {
        const other = without.get(each.id);
        if (other === each || JSON.stringify(other) === JSON.stringify(each)) continue;
        const said = resting.get(each.id) ?? [];
        said.push(sayUsualHere(group, each.about, refit.wiring));
        resting.set(each.id, said);
      }
    }
    this.#take(refit);
    return resting;
  }

  /** Of what has been taken last; afterwards the checkers stand without the wires that spoil the rest. */
  #findings(refit: Refit): readonly WiringFinding[] {
    const checker = this.#checker!;
    return rootsFirst({
      read: checker.drawing,
      findings: () => [...checker.findings(), ...this.#supply!.findings()],
      joining: (ends) => checker.joining(ends),
      wiresOfWay: (ends) => checker.wiresOfWay(ends),
      without: (left) => {
        const wires = Object.fromEntries(Object.entries(refit.wiring.wires).filter(([id]) => !left.has(id)));
        this.#take({ ...refit, wiring: { ...refit.wiring, wires } });
      },
    });
  }

  #take(refit: Refit): { readonly checker: WiringChecker; readonly supply: SupplyChecker } {
    this.#around = aroundOf(refit, this.#around);
    this.#checker ??= new WiringChecker(NOTHING_DRAWN, this.#around);
    const checker = this.#checker;
    checker.update(refit.wiring, this.#around);
    this.#supply ??= new SupplyChecker(refit);
    const supply = this.#supply;
    supply.update(refit, checker.drawing, checker.news(), this.#drawn);
    return { checker, supply };
  }
}

const NOTHING_DRAWN: Refit['wiring'] = { devices: {}, wires: {}, cables: {}, settings: {} };

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

/** With what rests on usual values. */
export function lookThrough(refit: Refit, drawn?: Drawn): Looked {
  const look = new WiringLook();
  const looked = look.look(refit, drawn);
  return { ...looked, resting: look.resting(refit) };
}
