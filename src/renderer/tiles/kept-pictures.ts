import { LRUCache } from 'lru-cache'

/** How a picture's bytes, as they came, are made into one form of it. */
export interface FormMaker<F> {
  /** @throws when the bytes are no picture */
  make(bytes: Blob): Promise<F>
  /** What the form takes in memory. */
  bytes(form: F): number
  close?(form: F): void
}

/** A maker for each form, by its name. */
export type FormMakers<Forms> = { readonly [F in keyof Forms]: FormMaker<Forms[F]> }

/** What is kept of one picture: what was fetched, and the forms that were made of it so far. */
interface PictureRecord<Forms> {
  readonly bytes: Blob
  readonly forms: Partial<Forms>
}

/**
 * Pictures by their address, each fetched once and in as many forms as are wanted of it; bounded in bytes: what was not
 * looked at for longest goes first, in all its forms.
 */
export class KeptPictures<Forms extends object> {
  readonly #records: LRUCache<string, PictureRecord<Forms>>
  readonly #makers: FormMakers<Forms>

  /** @param limit bytes of all forms and of what they were made of */
  constructor(limit: number, makers: FormMakers<Forms>) {
    this.#makers = makers
    this.#records = new LRUCache({
      maxSize: limit,
      sizeCalculation: (record) => Math.max(1, record.bytes.size + this.#bytesOf(record.forms)),
      // A record that gains a form takes the place of itself, and goes on being used.
      noDisposeOnSet: true,
      dispose: ({ forms }) => this.#close(forms),
    })
  }

  /** Bytes that are kept now. */
  get bytes(): number {
    return this.#records.calculatedSize
  }

  has(address: string, form: keyof Forms): boolean {
    return this.#records.peek(address)?.forms[form] !== undefined
  }

  /** A form of a picture, which counts as looked at now; undefined while it is not there. */
  get<F extends keyof Forms>(address: string, form: F): Forms[F] | undefined {
    return this.#records.get(address)?.forms[form]
  }

  /** What was fetched of a picture; undefined when it has to be fetched. */
  fetched(address: string): Blob | undefined {
    return this.#records.get(address)?.bytes
  }

  /** Makes a form of what was fetched of a picture. @throws when the bytes are no picture */
  make<F extends keyof Forms>(bytes: Blob, form: F): Promise<Forms[F]> {
    return this.#makers[form].make(bytes)
  }

  /** Keeps one more form of a picture. */
  keep<F extends keyof Forms>(address: string, bytes: Blob, form: F, made: Forms[F]): void {
    const before = this.#records.peek(address)
    if (before?.forms[form] !== undefined) this.#makers[form].close?.(before.forms[form])
    this.#records.set(address, { bytes, forms: { ...before?.forms, [form]: made } as Partial<Forms> })
  }

  #bytesOf(forms: Partial<Forms>): number {
    let sum = 0
    this.#each(forms, (maker, form) => {
      sum += maker.bytes(form)
    })
    return sum
  }

  #close(forms: Partial<Forms>): void {
    this.#each(forms, (maker, form) => maker.close?.(form))
  }

  #each(
    forms: Partial<Forms>,
    act: <F extends keyof Forms>(maker: FormMaker<Forms[F]>, form: Forms[F]) => void,
  ): void {
    for (const name of Object.keys(forms) as (keyof Forms)[]) {
      const form = forms[name]
      if (form !== undefined) act(this.#makers[name], form)
    }
  }
}
