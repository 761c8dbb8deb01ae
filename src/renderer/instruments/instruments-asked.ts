import { create } from 'zustand'

/** What is asked of the instruments of the job: a look at all of them, or a new one. */
interface Asked {
  for: 'all' | 'new'
  /** Called with the id of the one that is taken up; null: none is named. */
  onTake: (instrument: string | null) => void
}

export const useInstrumentsAsked = create<{ asked: Asked | null }>(() => ({ asked: null }))

/** Shows the instruments of the job. */
export const askForInstruments = (asked: Asked): void => useInstrumentsAsked.setState({ asked })

export const endInstruments = (): void => useInstrumentsAsked.setState({ asked: null })
