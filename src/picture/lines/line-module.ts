/** What the compiled loops over lines give: assembly/index.ts says what each does. Numbers that lie are addresses. */
export interface LineModule {
  readonly lineRoom: { readonly value: number };
  readLine(bytes: number, a: number, b: number, share: number, count: number, to: number): void;
  spreadLine(from: number, count: number, before: number, behind: number, to: number): void;
  linesToRgb(matrix: number, a: number, b: number, c: number, width: number, to: number): void;
  rgbToLines(matrix: number, from: number, width: number, a: number, b: number, c: number): void;
  mirrorRgb(rgb: number, width: number): void;
  gatherLine(from: number, count: number, ...weightsAndTo: FiveNumbers): void;
  gatherLines(
    l0: number,
    l1: number,
    l2: number,
    l3: number,
    count: number,
    ...weightsAndTo: FiveNumbers
  ): void;
  writeLine(bytes: number, from: number, count: number, most: number, to: number): void;
}

type FiveNumbers = [w0: number, w1: number, w2: number, w3: number, to: number];
