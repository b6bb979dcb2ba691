/** The d.c. bus that the axes share: transformer or regulated source, rectifier, capacitor, bleeder, dump resistor. */
import type { Supply } from './model.ts';

/** Longest step of the bus alone, s; a mains half-wave is a hundred of them. */
const LONGEST = 1e-4;

export type BusEvent = 'dump-on' | 'dump-off' | 'rectifier-on' | 'rectifier-off';

export class Bus {
  private readonly supply: Supply;
  /** V now. */
  voltage: number;
  lowest: number;
  highest: number;
  /** J taken from the source, burnt in the dump resistor, and burnt in the bleeder. */
  taken = 0;
  dumped = 0;
  bled = 0;
  /** J that axes and other things took. */
  used = 0;
  private readonly top: number;
  private readonly drop: number;
  private readonly turning: number;
  private mains = true;
  private conducts = false;
  private dumping = false;
  private readonly log: (event: BusEvent, time: number) => void;
  private readonly stage = new Float64Array(5);

  constructor(supply: Supply, log: (event: BusEvent, time: number) => void) {
    this.supply = supply;
    this.log = log;
    const wave = supply.kind === 'transformer';
    this.top = supply.voltage * (wave ? Math.SQRT2 * supply.mains : 1);
    this.drop = wave ? 2 * supply.diodeDrop : 0;
    this.turning = wave ? 2 * Math.PI * supply.frequency : 0;
    this.voltage = Math.max(0, this.top - this.drop);
    this.lowest = this.voltage;
    this.highest = this.voltage;
  }

  get steady(): boolean {
    return this.supply.kind === 'constant';
  }

  mainsOff(): void {
    this.mains = false;
  }

  /** J on the capacitor. */
  get stored(): number {
    return 0.5 * this.supply.capacitance * this.voltage ** 2;
  }

  /** J that do not add up since the capacitor held `start`; `used` is what axes and other things took. */
  residual(start: number): number {
    return this.taken - this.dumped - this.bled - this.used - (this.stored - start);
  }

  /** What the rectifier offers at `t`, V. */
  private offer(t: number): number {
    if (!this.mains) return 0;
    return (this.turning === 0 ? this.top : this.top * Math.abs(Math.sin(this.turning * t))) - this.drop;
  }

  /** Goes on for `h` from `t` while the axes together take `power` (W, negative when they give) and draw `current` (A). */
  advance(t: number, h: number, power: number, current = 0): void {
    if (this.steady) {
      this.taken += power * h;
      if (!this.mains) this.voltage = 0;
      this.lowest = Math.min(this.lowest, this.voltage);
      return;
    }
    const pieces = Math.ceil(h / LONGEST - 1e-9);
    const step = h / pieces;
    for (let piece = 0; piece < pieces; piece++) this.piece(t + piece * step, step, power, current);
  }

  private piece(t: number, h: number, power: number, current: number): void {
    const { stage, supply } = this;
    const ideal = supply.sourceResistance === 0;
    let done = 0;
    for (let turn = 0; turn < 8 && done < h; turn++) {
      const left = h - done;
      const from = t + done;
      const before = this.voltage;
      this.runge(from, left, power, current);
      let s = left;
      const after = stage[0]!;
      if (this.wantsChange(t + h, after)) {
        s = this.locate(from, left, power, current);
        this.runge(from, s, power, current);
      }
      this.voltage = Math.max(0, stage[0]!);
      this.taken += stage[1]!;
      this.bled += stage[2]!;
      this.dumped += stage[3]!;
      this.used += stage[4]!;
      done += s;
      if (ideal) {
        const least = this.offer(t + done);
        if (this.voltage < least) {
          if (!this.conducts) this.meets(from, s, before, power, current);
          this.conducts = true;
          this.taken += 0.5 * supply.capacitance * (least ** 2 - this.voltage ** 2);
          this.voltage = least;
        } else this.conducts = false;
      }
      this.lowest = Math.min(this.lowest, this.voltage);
      this.highest = Math.max(this.highest, this.voltage);
      if (s < left) this.change(t + done);
    }
    if (this.wantsChange(t + h, this.voltage)) this.change(t + h);
  }

  /** Where an ideal source takes over inside a step, the bus was lower than at either end: its lowest point counts. */
  private meets(t: number, h: number, before: number, power: number, current: number): void {
    const after = this.voltage;
    this.voltage = before;
    let low = 0;
    let high = h;
    for (let turn = 0; turn < 40; turn++) {
      const middle = (low + high) / 2;
      this.runge(t, middle, power, current);
      if (this.stage[0]! < this.offer(t + middle)) high = middle;
      else low = middle;
    }
    this.lowest = Math.min(this.lowest, this.stage[0]!);
    this.voltage = after;
  }

  private wantsChange(t: number, v: number): boolean {
    const { supply } = this;
    if (supply.sourceResistance > 0 && this.conducts !== this.offer(t) > v) return true;
    return this.dumping ? v < supply.dumpOff : v > supply.dumpOn;
  }

  /** Halves the step onto the moment of a change. */
  private locate(t: number, h: number, power: number, current: number): number {
    let low = 0;
    let high = h;
    for (let turn = 0; turn < 48; turn++) {
      const middle = (low + high) / 2;
      this.runge(t, middle, power, current);
      if (this.wantsChange(t + middle, this.stage[0]!)) high = middle;
      else low = middle;
    }
    return high;
  }

  private change(t: number): void {
    const { supply, voltage } = this;
    if (supply.sourceResistance > 0) {
      const conducts = this.offer(t) > voltage;
      if (conducts !== this.conducts) {
        this.conducts = conducts;
        this.log(conducts ? 'rectifier-on' : 'rectifier-off', t);
      }
    }
    const dumping = this.dumping ? voltage >= supply.dumpOff : voltage > supply.dumpOn;
    if (dumping !== this.dumping) {
      this.dumping = dumping;
      this.log(dumping ? 'dump-on' : 'dump-off', t);
    }
  }

  /** Fourth-order step of voltage and of the three energies, into `stage`. */
  private runge(t: number, h: number, power: number, current: number): void {
    const { stage, supply } = this;
    const { sourceResistance: Rs, capacitance: C, bleeder, dumpResistance, otherLoad } = supply;
    let v = this.voltage;
    let slope = 0;
    let rise = 0;
    stage[1] = 0;
    stage[2] = 0;
    stage[3] = 0;
    stage[4] = 0;
    for (let k = 0; k < 4; k++) {
      const ahead = k === 0 ? 0 : k === 3 ? h : h / 2;
      if (k > 0) v = this.voltage + ahead * slope;
      const source = this.conducts && Rs > 0 ? (this.offer(t + ahead) - v) / Rs : 0;
      const bleed = v / bleeder;
      const dump = this.dumping ? v / dumpResistance : 0;
      // An empty bus can give nothing; below a volt no drive works.
      const drawn = v > 0 ? (power + otherLoad) / Math.max(v, 1) + current : Math.min(0, power);
      slope = (source - bleed - dump - drawn) / C;
      const weight = (k === 0 || k === 3 ? 1 : 2) * (h / 6);
      rise += weight * slope;
      stage[1] += weight * source * v;
      stage[2] += weight * bleed * v;
      stage[3] += weight * dump * v;
      stage[4] += weight * drawn * v;
    }
    stage[0] = this.voltage + rise;
  }
}
