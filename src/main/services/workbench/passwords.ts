/** What opens locked scans: kept in memory, by the scan's SHA-256, for as long as the host runs; never written. */
export class Passwords {
  readonly #known = new Map<string, string>()

  of(sha256: string): string | undefined {
    return this.#known.get(sha256.toLowerCase())
  }

  keep(sha256: string, password: string | undefined): void {
    if (password !== undefined) this.#known.set(sha256.toLowerCase(), password)
  }
}
