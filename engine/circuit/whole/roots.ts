/**
 * Findings that spoil what is said of everything else: mains on a signal, a shorted supply, two supplies joined. The wire that
 * most likely does it is left out, and the rest is judged without it; what then is no longer said goes with it.
 */
import type { Root, WiringFinding } from '../wiring/index.ts';
import { byConsequence } from './consequence.ts';
import { sayAbout } from './say-about.ts';

/** As many mistakes of this kind are looked behind. */
const MOST = 8;
/** Wires of a way that are tried; a longer one is no single mistake. */
const LONGEST = 24;

export interface Judging {
  /** As it stands now: without the wires that have been left out. */
  readonly read: Parameters<typeof sayAbout>[0];
  readonly findings: () => readonly WiringFinding[];
  readonly joining: (ends: Root['ends']) => string | undefined;
  readonly wiresOfWay: (ends: Root['ends']) => readonly string[];
  /** From here on everything is judged without these wires. */
  readonly without: (wires: ReadonlySet<string>) => void;
}

/** All findings in the order in which they matter. */
export function rootsFirst(judging: Judging): readonly WiringFinding[] {
  const { read, findings, joining, without } = judging;
  let now = findings();
  const roots: WiringFinding[] = [];
  const left = new Set<string>();
  for (let n = 0; n < MOST; n++) {
    const root = worstRoot(now);
    if (!root) break;
    const wires = new Map<string, string>();
    const before = now;
    // Wires beside each other join them together.
    while (left.size < 2 * MOST && now.some((each) => isSame(each, root))) {
      const wire = root.root!.throughContacts
        ? leastSaidWithout(judging, root, left)
        : joining(root.root!.ends);
      if (wire === undefined || left.has(wire)) break;
      wires.set(wire, sayAbout(read, wire) ?? wire);
      left.add(wire);
      without(left);
      now = findings();
    }
    // Metal or a contact joins them: nothing can be told apart, and it stands as it is.
    if (now.some((each) => isSame(each, root))) break;
    const told = toldWith(root, wires, goneWith(before, now, root));
    // Two mistakes at one pole are two findings.
    roots.push(
      roots.some(({ id }) => id === told.id) ? { ...told, id: `${told.id}:${root.root!.ends[1]}` } : told,
    );
  }
  return [...roots, ...now].sort(byConsequence);
}

/** Of the wires of a way the one without which the least is wrong. */
function leastSaidWithout(
  { findings, wiresOfWay, without }: Judging,
  root: WiringFinding,
  left: ReadonlySet<string>,
): string | undefined {
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const wire of wiresOfWay(root.root!.ends).slice(0, LONGEST)) {
    without(new Set([...left, wire]));
    const wrong = findings().filter(({ verdict }) => verdict === 'fails' || verdict === 'unknown').length;
    if (wrong < least) [best, least] = [wire, wrong];
  }
  without(left);
  return best;
}

const isSame = ({ id, root }: WiringFinding, other: WiringFinding): boolean =>
  id === other.id && root?.ends.join() === other.root!.ends.join();

const worstRoot = (findings: readonly WiringFinding[]): WiringFinding | undefined =>
  findings.filter(({ root }) => root).sort(byConsequence)[0];

/** How many are said only with it; what fits is no trouble that goes. */
function goneWith(
  before: readonly WiringFinding[],
  after: readonly WiringFinding[],
  root: WiringFinding,
): number {
  const still = new Set(after);
  const said = new Set(after.map(({ id, verdict, sentence }) => `${id}\n${verdict}\n${sentence}`));
  return before.filter(
    (each) =>
      each.verdict !== 'fits' &&
      each.id !== root.id &&
      !still.has(each) &&
      !said.has(`${each.id}\n${each.verdict}\n${each.sentence}`),
  ).length;
}

function toldWith(finding: WiringFinding, named: ReadonlyMap<string, string>, follow: number): WiringFinding {
  const wires = [...named.keys()];
  const one = wires.length === 1;
  const goes =
    follow === 0
      ? ''
      : ` ${follow} other ${follow === 1 ? 'finding follows' : 'findings follow'} from this and will go with it.`;
  return {
    ...finding,
    about: [...new Set([...finding.about, ...wires])],
    sentence: `${finding.sentence} Most likely ${one ? 'this wire joins' : 'these wires join'} them: ${[...named.values()].join('; ')}.${goes} Everything else is judged as if ${one ? 'it were' : 'they were'} not there.`,
    root: { ...finding.root!, wires, follow },
  };
}
