/** Ohms of every net against earth and against its own 0 V. */
import type { ReadWiring } from '../wiring/types.ts';
import { bondStep } from './bond-step.ts';
import type { Commons } from './commons.ts';
import { companyOf, type OhmPaths } from './ohms.ts';
import { judgeOhms, ohmsAmiss } from './say.ts';
import { touched } from './touched.ts';
import type { RingRow, RingStep } from './types.ts';

/** Every net against its 0 V and against earth. */
export function pathSteps(wiring: ReadWiring, commons: Commons, paths: OhmPaths): readonly RingStep[] {
  const company = companyOf(wiring, paths.ways);
  const nets = wiring.nets.filter(({ wires }) => wires.length > 0);
  const node = (id: string): string => wiring.netOf.get(id)?.id ?? id;
  const fills = fillsBetween(wiring);
  const rowsAgainst = (step: string, of: (net: string) => string | undefined): RingRow[] =>
    nets.flatMap((net): RingRow[] => {
      const black = of(net.id);
      if (black === undefined || node(black) === net.id) return [];
      const band = paths.band(net.id, node(black));
      const judged = judgeOhms(band, company.get(net.id) ?? { electronics: [], unsaid: [] });
      return [
        {
          id: `${step}:${net.id}`,
          measured: 'ohms',
          at: touched(wiring, net),
          against: black,
          ...judged,
          ...(fills(net.terminals, black)
            ? { says: `${judged.says}; it climbs to that while the capacitors fill` }
            : {}),
          otherwise: judged.expect === undefined ? '' : ohmsAmiss(judged.expect, step === 'earth'),
        },
      ];
    });
  const steps: RingStep[] = [...bondStep(wiring, commons.earth)];
  if (commons.earth !== undefined)
    steps.push({
      id: 'earth',
      title: 'Against protective earth',
      says: 'Black lead on the earth bar, red lead on each terminal; fuses in, buttons as they lie.',
      cautions: [],
      powered: false,
      rows: rowsAgainst('earth', () => commons.earth),
    });
  if (commons.of.size > 0)
    steps.push({
      id: 'common',
      title: 'Against its own 0 V',
      says: 'Black lead on the 0 V named, red lead on each terminal; fuses in, buttons as they lie.',
      cautions: [],
      powered: false,
      rows: rowsAgainst('common', (net) => commons.of.get(net)),
    });
  return steps;
}

/** Whether the meter fills capacitors between the nets of these terminals and another: both sides of a bus. */
function fillsBetween(wiring: ReadWiring): (ids: readonly string[], black: string) => boolean {
  const busOf = (id: string): string | undefined => {
    const terminal = wiring.terminals.get(id);
    const isBus = terminal?.nature.kind === 'supply' && terminal.nature.regulated === false;
    return isBus ? terminal.device : undefined;
  };
  const known = new Map<string, ReadonlySet<string>>();
  const buses = (black: string): ReadonlySet<string> => {
    const found =
      known.get(black) ??
      new Set(
        (wiring.netOf.get(black)?.terminals ?? [black]).map(busOf).filter((each) => each !== undefined),
      );
    known.set(black, found);
    return found;
  };
  return (ids, black) => {
    const devices = buses(black);
    return devices.size > 0 && ids.some((id) => devices.has(busOf(id) ?? ''));
  };
}
