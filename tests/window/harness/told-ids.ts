import type { Page } from 'playwright-core'

/** Runs in the page: complains on its console of every minted id that a person is told, in words or in a picture. */
function complainOfIds(): void {
  const minted = /-[0-9a-z]{12}/
  const told = ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'alt', 'placeholder']
  const complained = new Set<string>()
  const look = (where: string, text: string | null | undefined): void => {
    if (!text || !minted.test(text) || complained.has(text)) return
    complained.add(text)
    console.error(`a minted id is told in ${where}: ${text}`)
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
