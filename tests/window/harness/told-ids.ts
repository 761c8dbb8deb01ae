import type { Page } from 'playwright-core'

/** Runs in the page: complains on its console of every minted id that a person is told, or its end, in words or in a picture. */
function complainOfIds(): void {
  // A whole id, or the end of one after the noun of a thing that has neither a number nor a name: no word is made of these
  // letters, for none of them is a vowel; four digits alone may be a number.
  const nouns =
    'person|instrument|sheet|view|mark|point|line|circle|path|figured size|evidence|printed|found|derived|scaled|relation|note'
  const end = '(?![2-9]{4}\\b)[23456789bcdfghjkmnpqrstvwxyz]{4}'
  const minted = new RegExp(`-[0-9a-z]{12}|\\b(?:${nouns}) ${end}(?![\\w-])`, 'i')
  const told = ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'alt', 'placeholder']
  const complained = new Set<string>()
  const look = (where: string, text: string | null | undefined): void => {
    if (!text || !minted.test(text) || complained.has(text)) return
    complained.add(text)
    console.error(`a minted id, or its end, is told in ${where}: ${text}`)
  }
  const lookAt = (node: Node): void => {
    if (node instanceof Text) look(`the text of ${node.parentElement?.tagName}`, node.data)
    if (!(node instanceof Element)) return
    for (const name of told) look(`${name} of ${node.tagName}`, node.getAttribute(name))
    if (node instanceof HTMLInputElement || node instanceof HTMLTextAreaElement) look('a field', node.value)
  }
  const lookIn = (root: Node): void => {
    lookAt(root)
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT)
    while (walker.nextNode() !== null) lookAt(walker.currentNode)
  }
  new MutationObserver((changes) => {
    for (const { type, target, addedNodes } of changes) {
      if (type === 'childList') for (const node of addedNodes) lookIn(node)
      else lookAt(target)
    }
  }).observe(document, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
    attributeFilter: [...told, 'value'],
  })
  const { fillText, strokeText } = CanvasRenderingContext2D.prototype
  CanvasRenderingContext2D.prototype.fillText = function (...drawn) {
    look('a picture', drawn[0])
    fillText.apply(this, drawn)
  }
  CanvasRenderingContext2D.prototype.strokeText = function (...drawn) {
    look('a picture', drawn[0])
    strokeText.apply(this, drawn)
  }
}

/**
 * Has a page complain on its console of each minted id that is told to whoever is at it; what stands on the console is
 * a fault.
 */
export async function watchToldIds(page: Page): Promise<void> {
  await page.addInitScript(complainOfIds)
  // Where the window is open already.
  await page.evaluate(complainOfIds)
}
