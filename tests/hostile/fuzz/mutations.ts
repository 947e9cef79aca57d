import fc from 'fast-check';

/** One change of a file's bytes. Places are shares of the length, so that a change fits any file. */
type Mutation = (bytes: Uint8Array) => Uint8Array;

const share = fc.double({ min: 0, max: 1, noNaN: true });
const place = (bytes: Uint8Array, at: number) => Math.min(bytes.length, Math.floor(at * (bytes.length + 1)));

const joined = (...parts: readonly Uint8Array[]) => new Uint8Array(Buffer.concat(parts));

/** `cut` bytes taken out at a place and others put in. */
function spliced(bytes: Uint8Array, at: number, cut: number, put: Uint8Array): Uint8Array {
  const from = place(bytes, at);
  return joined(bytes.subarray(0, from), put, bytes.subarray(from + cut));
}

const flip: fc.Arbitrary<Mutation> = fc.tuple(share, fc.nat(7)).map(([at, bit]) => (bytes) => {
  const out = bytes.slice();
  if (out.length > 0) out[Math.min(out.length - 1, place(out, at))] ^= 1 << bit;
  return out;
});

const truncate: fc.Arbitrary<Mutation> = share.map((at) => (bytes) => bytes.slice(0, place(bytes, at)));

const replace: fc.Arbitrary<Mutation> = fc.tuple(share, fc.nat(64), fc.uint8Array({ maxLength: 16 })).map(
  ([at, cut, put]) =>
    (bytes) =>
      spliced(bytes, at, cut, put),
);

/** A stretch once more, up to a few hundred times: what is counted gets too many, what nests nests deeper. */
const repeat: fc.Arbitrary<Mutation> = fc
  .tuple(share, fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 300 }))
  .map(([at, length, times]) => (bytes) => {
    const from = place(bytes, at);
    const stretch = bytes.subarray(from, from + length);
    return spliced(bytes, at, 0, joined(...Array.from({ length: times }, () => stretch)));
  });

/** Sizes, counts and offsets at their edges, in either order of bytes. */
const edges = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0x8000, 0xffff, 0x7fffffff, 0x80000000, 0xffffffff];
const number: fc.Arbitrary<Mutation> = fc
  .tuple(share, fc.constantFrom(...edges), fc.constantFrom(1, 2, 4), fc.boolean())
  .map(([at, value, size, big]) => {
    const put = Buffer.alloc(size);
    if (big) put.writeUIntBE(value % 256 ** size, 0, size);
    else put.writeUIntLE(value % 256 ** size, 0, size);
    return (bytes) => spliced(bytes, at, size, put);
  });

/** A word of the format, or one that formats stumble over. */
const oddWords = ['\0', '\r', '\n', '\ufeff', '-', 'nan', '1e999', '-0', '0x1', '"', '<', '{', '[', '\u2028'];
const word = (words: readonly string[]): fc.Arbitrary<Mutation> =>
  fc.tuple(share, fc.nat(12), fc.constantFrom(...words, ...oddWords)).map(
    ([at, cut, text]) =>
      (bytes) =>
        spliced(bytes, at, cut, Buffer.from(text)),
  );

/** The beginning of one file of the corpus with the end of another. */
const cross = (corpus: readonly Uint8Array[]): fc.Arbitrary<Mutation> =>
  fc.tuple(fc.constantFrom(...corpus), share, share).map(
    ([other, at, from]) =>
      (bytes) =>
        joined(bytes.subarray(0, place(bytes, at)), other.subarray(place(other, from))),
  );

/** Files that were good until one to six things happened to them; now and then nothing but noise. */
export function brokenFiles(
  corpus: readonly Uint8Array[],
  words: readonly string[],
): fc.Arbitrary<Uint8Array> {
  const change = fc.oneof(flip, truncate, replace, repeat, number, word(words), cross(corpus));
  const broken = fc
    .tuple(fc.constantFrom(...corpus), fc.array(change, { minLength: 1, maxLength: 6 }))
    .map(([file, changes]) => changes.reduce((bytes, mutate) => mutate(bytes), file));
  return fc.oneof(
    { weight: 15, arbitrary: broken },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 600 }) },
  );
}
