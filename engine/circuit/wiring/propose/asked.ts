/** What the auxiliaries ask of the wiring, in the words of the wiring: a room below says it of a refit. */

export interface AskedInput {
  /** 'pressure' */
  readonly id: string;
  /** 'oil pressure' */
  readonly name: string;
  readonly sensor: 'switch' | 'PNP' | 'NPN';
  /** One switch tells it to all auxiliaries that ask for it: 'standstill', 'shut'. */
  readonly shared: boolean;
}

export interface AskedOutput {
  readonly id: string;
  /** 'coolant pump' */
  readonly name: string;
  readonly by: '24 V' | 'contact' | '5 V';
  /** What it moves: the coil of a valve, a motor on the mains by a contactor, the lock of a door, a wish to a drive. */
  readonly moves: 'valve' | 'motor' | 'lock' | 'relay';
  /** Output that drives the same motor the other way round. */
  readonly against?: string;
}

export interface AskedAuxiliary {
  readonly id: string;
  readonly name: string;
  readonly inputs: readonly AskedInput[];
  readonly outputs: readonly AskedOutput[];
}
