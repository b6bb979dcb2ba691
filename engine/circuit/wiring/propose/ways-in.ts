/** Inputs and outputs of a control that are free, and how something is joined to one. */
import { pairing } from '../pairing.ts';
import { readWiring } from '../read.ts';
import type { Terminal } from '../types.ts';
import type { Build } from './build.ts';

export interface Rails {
  readonly plus24: string;
  readonly zero: string;
}

/** Marks in the order of their numbers: in1, in2, …, in10. */
const inOrder = (a: Terminal, b: Terminal): number => Number(/\d+/.exec(a.mark)) - Number(/\d+/.exec(b.mark));

export class Control {
  readonly id: string;
  readonly rails: Rails;
  private readonly build: Build;
  private known: boolean | undefined;

  constructor(build: Build, id: string, rails: Rails) {
    this.build = build;
    this.id = id;
    this.rails = rails;
  }

  freeInputs(): readonly Terminal[] {
    const of = (test: RegExp) =>
      [...this.build.terminals(this.id).values()]
        .filter(({ mark, id }) => test.test(mark) && !this.build.taken(id))
        .sort(inOrder);
    return [...of(/^in\d+$/), ...of(/^p\d+$/)];
  }

  freeOutputs(): readonly Terminal[] {
    return this.free(/^out\d+$/);
  }

  freeContacts(): readonly Terminal[] {
    return this.free(/^r\d+a$/);
  }

  private free(test: RegExp): readonly Terminal[] {
    return [...this.build.terminals(this.id).values()]
      .filter(({ mark, id }) => test.test(mark) && !this.build.taken(id))
      .sort(inOrder);
  }

  /** Whether its inputs give current and want to be pulled to minus; of those that take either, as their common lies. */
  get pulled(): boolean {
    // The same for all that is laid in one proposal; to read it takes the whole wiring.
    this.known ??= this.readPulled();
    return this.known;
  }

  private readPulled(): boolean {
    const { wiring, refit } = this.build;
    const read = readWiring(wiring, refit);
    const device = read.devices.get(this.id);
    const form = String(device?.settings['input-form'] ?? '');
    if (form === 'sourcing' || form === 'sinking') return form === 'sourcing';
    const common = read.netOf.get(`${this.id}.in-com`);
    const pole = common?.terminals
      .map((id) => read.terminals.get(id)!.nature)
      .find((nature) => nature.kind === 'supply');
    if (pole?.kind === 'supply') return pole.pole === 'plus';
    return refit.wiring.settings.homes === 'NPN sensors';
  }

  /** Where its inputs' common belongs. */
  get common(): string {
    return this.pulled ? this.rails.plus24 : this.rails.zero;
  }

  /** What a plain contact joins to an input to switch it on. */
  other(input: Terminal): string {
    if (input.mark.startsWith('p')) return `${this.id}.GND`;
    return this.pulled ? this.rails.zero : this.rails.plus24;
  }

  /** Whether the output of a sensor may go straight to an input. */
  takes(output: Terminal, input: Terminal): boolean {
    if (!pairing(output, input).fits || output.nature.kind !== 'output') return false;
    if (input.mark.startsWith('p')) return false;
    return (output.nature.stage === 'sinking') === this.pulled;
  }
}
