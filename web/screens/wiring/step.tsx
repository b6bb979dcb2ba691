/** How far the worker is with something that takes a while, and with what. */
import type { Step } from './wiring-protocol.ts';

export function StepShown({ step: { says, at, of } }: { readonly step: Step }) {
  return (
    <>
      <progress max={of} value={at - 0.5} aria-label="How far it is" />
      <span className="small">
        {says} … ({at} of {of})
      </span>
    </>
  );
}
