/** What is kept of a run for drawing: every look, thinned to about a number of points. */

export interface InStepTrace {
  /** s. */
  readonly time: Float64Array;
  /** rad the spindle has turned, and rad/s. */
  readonly angle: Float64Array;
  readonly speed: Float64Array;
  /** m where the tool is, and where it should be for the spindle's true angle. */
  readonly place: Float64Array;
  readonly ideal: Float64Array;
}

export class TraceList {
  readonly time: number[] = [];
  readonly angle: number[] = [];
  readonly speed: number[] = [];
  readonly place: number[] = [];
  readonly ideal: number[] = [];

  add(time: number, angle: number, speed: number, place: number, ideal: number): void {
    this.time.push(time);
    this.angle.push(angle);
    this.speed.push(speed);
    this.place.push(place);
    this.ideal.push(ideal);
  }

  get length(): number {
    return this.time.length;
  }

  /** About `points` of them, the last one always. */
  thinned(points: number): InStepTrace {
    const every = Math.max(1, Math.ceil(this.length / points));
    const keep = (values: readonly number[]): Float64Array =>
      Float64Array.from(values.filter((_, at) => at % every === 0 || at === values.length - 1));
    return {
      time: keep(this.time),
      angle: keep(this.angle),
      speed: keep(this.speed),
      place: keep(this.place),
      ideal: keep(this.ideal),
    };
  }
}
