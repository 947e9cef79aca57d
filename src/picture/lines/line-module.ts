/** What the compiled loops over lines give: assembly/index.ts says what each does. Numbers that lie are addresses. */
export interface LineModule {
  readonly lineRoom: { readonly value: number };
  readLine(bytes: number, a: number, b: number, share: number, count: number, to: number): void;
  linesToRgb(matrix: number, a: number, b: number, c: number, width: number, to: number): void;
  spreadToRgb(
    matrix: number,
    bytes: number,
    a: number,
    b: number,
    c: number,
    before: number,
    behind: number,
    width: number,
    to: number,
  ): void;
  rgbToLines(
    matrix: number,
    from: number,
    width: number,
    bytes: number,
    most: number,
    codes: number,
    b: number,
    c: number,
  ): void;
  mirrorRgb(rgb: number, width: number): void;
  gatherCodes(
    bytes: number,
    from: number,
    count: number,
    ...[w0, w1, w2, w3, most, to]: readonly [number, number, number, number, number, number]
  ): void;
  gatherLines(
    l0: number,
    l1: number,
    l2: number,
    l3: number,
    count: number,
    ...[w0, w1, w2, w3, to]: readonly [number, number, number, number, number]
  ): void;
  writeLine(bytes: number, from: number, count: number, most: number, to: number): void;
}
