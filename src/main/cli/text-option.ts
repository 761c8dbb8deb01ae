import { InvalidArgumentError } from 'commander'

/** Takes the text of an option that must say something. @throws InvalidArgumentError when it is blank */
export const notBlank =
  (advice: string) =>
  (text: string): string => {
    if (text.trim() !== '') return text.trim()
    throw new InvalidArgumentError(advice)
  }
