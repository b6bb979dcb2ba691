/** The machine under the hand: its state, what can be done, what happened, and a fault that is being shown. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Model, State } from '../../../engine/circuit/stop/index.ts';
import {
  type Act,
  act,
  actsOf,
  canAct,
  demandsOf,
  type NamedFault,
  networkOf,
  POWER_ON,
  Simulation,
  StopOrder,
  sayStopping,
  standingOf,
  startActs,
  started,
  stoppingOf,
  takeOver,
} from '../../../engine/circuit/stop/index.ts';

export interface Happened {
  readonly n: number;
  readonly act: string;
  /** One line each. */
  readonly says: readonly string[];
}

export interface Machine {
  readonly simulation: Simulation;
  readonly state: State;
  readonly acts: readonly Act[];
  readonly can: (each: Act) => boolean;
  readonly happened: readonly Happened[];
  readonly fault: NamedFault | undefined;
  readonly playing: boolean;
  readonly do: (each: Act) => void;
  /** Power on and every start pressed. */
  readonly start: () => void;
  /** Puts the fault into the running machine, asks for a stop, takes it back, tries to start again. */
  readonly show: (fault: NamedFault) => void;
  readonly mend: () => void;
}

/** Milliseconds between the steps of a shown fault. */
const STEP = 1100;

export function useMachine(model: Model): Machine {
  const [fault, setFault] = useState<NamedFault>();
  const simulation = useMemo(() => new Simulation(networkOf(model, fault?.faults)), [model, fault]);
  const [state, setState] = useState<State>(() => started(new Simulation(networkOf(model))));
  const [happened, setHappened] = useState<readonly Happened[]>([]);
  const [playing, setPlaying] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const now = useRef(state);
  const count = useRef(0);
  now.current = state;

  const put = useCallback(
    (into: Simulation, each: Act | undefined, says: string): void => {
      const before = now.current;
      const after = takeOver(into.network, before);
      const order = new StopOrder(model, after);
      const settled = each ? act(into, after, each, order.watch) : into.settle(after, order.watch);
      now.current = after;
      setState(after);
      count.current++;
      const what = [
        ...changes(model, before, after, order),
        ...settled.melted.map((at) => `fuse ${model.contacts[at]!.element} melts`),
        ...settled.restless.map((at) => `${model.movers[at]!.id} chatters`),
        ...(settled.shorted.length > 0 ? ['plus meets minus without a fuse between them'] : []),
      ];
      const entry = { n: count.current, act: says, says: what.length > 0 ? what : ['nothing changes'] };
      setHappened((list) => [entry, ...list].slice(0, 12));
    },
    [model],
  );

  const stopPlaying = useCallback(() => {
    clearTimeout(timer.current);
    setPlaying(false);
  }, []);
  useEffect(() => () => clearTimeout(timer.current), []);
  // Another circuit is another machine.
  useEffect(() => {
    stopPlaying();
    setFault(undefined);
    setHappened([]);
    const fresh = started(new Simulation(networkOf(model)));
    now.current = fresh;
    setState(fresh);
  }, [model, stopPlaying]);

  const show = useCallback(
    (wanted: NamedFault) => {
      stopPlaying();
      setFault(wanted);
      setPlaying(true);
      const faulty = new Simulation(networkOf(model, wanted.faults));
      const fresh = started(new Simulation(networkOf(model)));
      now.current = fresh;
      setState(fresh);
      setHappened([{ n: ++count.current, act: 'It runs', says: ['as it should'] }]);
      const demand = demandsOf(model).find(({ role }) => role === 'emergency') ?? demandsOf(model)[0]!;
      const steps: (readonly [Act | undefined, string])[] = [
        [undefined, `The fault comes: ${wanted.says}`],
        [demand.act, demand.act.says],
        [demand.back, demand.back.says],
        ...startActs(model).map((each) => [each, each.says] as const),
      ];
      const next = (at: number): void => {
        const step = steps[at];
        if (!step) {
          setPlaying(false);
          return;
        }
        put(faulty, step[0], step[1]);
        timer.current = setTimeout(() => next(at + 1), STEP);
      };
      timer.current = setTimeout(() => next(0), STEP / 2);
    },
    [model, put, stopPlaying],
  );

  return {
    simulation,
    state,
    acts: useMemo(() => actsOf(model), [model]),
    can: (each) => canAct(simulation, state, each),
    happened,
    fault,
    playing,
    do: (each) => {
      stopPlaying();
      put(simulation, each, each.says);
    },
    start: () => {
      stopPlaying();
      if (now.current.power === 0) put(simulation, POWER_ON, POWER_ON.says);
      for (const each of startActs(model)) put(simulation, each, each.says);
    },
    show,
    mend: () => {
      stopPlaying();
      setFault(undefined);
      const fresh = started(new Simulation(networkOf(model)));
      now.current = fresh;
      setState(fresh);
      setHappened([]);
    },
  };
}

/** What an act changed, in words: 'K1 lets go; X stops'. */
function changes(model: Model, before: State, after: State, order: StopOrder): readonly string[] {
  const movers = model.movers.flatMap(({ id, kind }, at) =>
    kind === 'hand' || before.at[at] === after.at[at] ? [] : [`${id} ${after.at[at] === 1 ? 'on' : 'off'}`],
  );
  const motions = model.motions.flatMap(({ id }, at) => {
    const [was, is] = [standingOf(model, before, at), standingOf(model, after, at)];
    if (was.driven && !is.driven) {
      return [`STOPS ${sayStopping(stoppingOf(model, at, order))}`];
    }
    if (!was.driven && is.driven) return [`STARTS ${id}`];
    return !was.falls && is.falls ? [`DROPS ${id}`] : [];
  });
  return movers.length > 0 ? [...motions, movers.join('; ')] : motions;
}
