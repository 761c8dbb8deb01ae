import { fromBase64 } from './base64.ts'
import { KERNEL } from './kernel-module.ts'

/** The inner loops, as `kernel.wat` writes them: sizes count numbers of 32 bits, places are byte addresses. */
interface Loops {
  memory: { readonly buffer: ArrayBuffer; grow(pages: number): number }
  multiply(a: number, lda: number, b: number, c: number, ldc: number, m: number, n: number, k: number): void
  spread(to: number, from: number, m: number, n: number): void
  rectify(at: number, n: number): void
  addAndRectify(at: number, more: number, n: number): void
}

/** What is used of WebAssembly, which every place that this runs has, and which the language's own types leave out. */
interface WebAssemblyOf {
  readonly Module: new (bytes: Uint8Array) => object
  readonly Instance: new (module: object) => { readonly exports: unknown }
}

const PAGE = 65_536

/** The inner loops with the memory that they work on. */
export class Kernel {
  readonly loops: Loops
  #used = 0

  constructor() {
    const { WebAssembly } = globalThis as unknown as { WebAssembly: WebAssemblyOf }
    this.loops = new WebAssembly.Instance(new WebAssembly.Module(fromBase64(KERNEL))).exports as Loops
  }

  /** How much is taken: what is given to `releaseTo` later. */
  get mark(): number {
    return this.#used
  }

  /** Gives back all that was taken since. */
  releaseTo(mark: number): void {
    this.#used = mark
  }

  /** Room for so many numbers, all 0: its address. */
  take(numbers: number): number {
    const at = this.#used
    const end = at + Math.ceil(numbers / 4) * 16
    const { memory } = this.loops
    if (end > memory.buffer.byteLength) memory.grow(Math.ceil((end - memory.buffer.byteLength) / PAGE))
    new Float32Array(memory.buffer, at, (end - at) / 4).fill(0)
    this.#used = end
    return at
  }

  /** The numbers from an address on. Stands until the next `take`. */
  numbers(at: number, count: number): Float32Array {
    return new Float32Array(this.loops.memory.buffer, at, count)
  }
}
