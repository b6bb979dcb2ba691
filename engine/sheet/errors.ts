/** A mistake in a sheet as written. Thrown when the sheet is defined, so that it never reaches a person's numbers. */
export class SheetError extends Error {
  readonly sheet: string;
  readonly symbol: string | undefined;

  constructor(sheet: string, symbol: string | undefined, message: string) {
    super(
      symbol === undefined
        ? `sheet '${sheet}': ${message}`
        : `sheet '${sheet}', symbol '${symbol}': ${message}`,
    );
    this.name = 'SheetError';
    this.sheet = sheet;
    this.symbol = symbol;
  }
}

/** An expression outside the language. `defineSheet` turns it into a SheetError. */
export class ExpressionError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'ExpressionError';
  }
}
