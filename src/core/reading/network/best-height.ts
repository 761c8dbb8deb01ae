/** Height of full digits in its field that the network knows best, pixels: as it was trained. */
export const BEST_HEIGHT = 21
