/** Compresses one row by the PackBits scheme: runs, and stretches without one. Source: TIFF 6.0, section 9. */
export function packBits(row: Buffer): Buffer {
  const out: number[] = []
  let literal: number[] = []
  const flush = (): void => {
    if (literal.length > 0) out.push(literal.length - 1, ...literal)
    literal = []
  }
  for (let at = 0; at < row.length; ) {
    const byte = row[at] ?? 0
    let run = 1
    while (run < 128 && row[at + run] === byte) run += 1
    if (run >= 3) {
      flush()
      out.push(257 - run, byte)
    } else {
      for (let i = 0; i < run; i++) {
        literal.push(byte)
        if (literal.length === 128) flush()
      }
    }
    at += run
  }
  flush()
  return Buffer.from(out)
}
