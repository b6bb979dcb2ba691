/** Leads of motors, by what they are. */
export const MOTORS = ['brushed', 'brushless', 'stepper', 'induction'] as const;

export function phaseMarks(of: (typeof MOTORS)[number]): readonly string[] {
  switch (of) {
    case 'brushed':
      return ['M+', 'M-'];
    case 'stepper':
      return ['A+', 'A-', 'B+', 'B-'];
    case 'brushless':
    case 'induction':
      return ['U', 'V', 'W'];
  }
}
