/** What our tests use of the solver; the package brings no types. */
declare module 'logic-solver' {
  interface Formula {
    readonly type: string;
  }
  /** A variable's name, with a minus in front for its opposite, or a formula. */
  type Operand = string | Formula;
  interface Solution {
    evaluate(operand: Operand): boolean;
  }
  class Solver {
    require(...operands: readonly Operand[]): void;
    forbid(...operands: readonly Operand[]): void;
    solve(): Solution | null;
    solveAssuming(operand: Operand): Solution | null;
  }
  function or(...operands: readonly Operand[]): Formula;
  function and(...operands: readonly Operand[]): Formula;
  function equiv(one: Operand, other: Operand): Formula;
  const TRUE: string;
  const FALSE: string;
  const Logic: {
    readonly Solver: typeof Solver;
    readonly or: typeof or;
    readonly and: typeof and;
    readonly equiv: typeof equiv;
    readonly TRUE: string;
    readonly FALSE: string;
  };

  export type { Formula, Operand, Solution };
  export default Logic;
}
