import './dialog.css'
import type { ReactNode } from 'react'
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Button } from './button.tsx'

interface DialogProps {
  title: string
  open: boolean
  onClose: () => void
  children: ReactNode
  /** Buttons at its foot. */
  actions?: ReactNode
  wide?: boolean
  /** Whether a press beside it leaves it open, for what would be lost. */
  firm?: boolean
}

/** Something that must be read or answered before going on. Esc and the button at its head close it. */
export function Dialog(props: DialogProps) {
  const { title, open, onClose, children, actions, wide = false, firm = false } = props
  return (
    <ModalOverlay
      className="dialog-veil"
      isOpen={open}
      isDismissable={!firm}
      onOpenChange={(now) => {
        if (!now) onClose()
      }}
    >
      <Modal className="dialog-sheet" data-wide={wide || undefined}>
        <AriaDialog className="dialog">
          <div className="dialog-head">
            <Heading slot="title" className="dialog-title">
              {title}
            </Heading>
            <Button kind="quiet" icon="close" label="Close" onPress={onClose} />
          </div>
          <div className="dialog-body">{children}</div>
          {actions !== undefined && <div className="dialog-foot">{actions}</div>}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  )
}
