import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'

interface DialogProps {
  open: boolean
  heading: string
  onClose: () => void
  children: ComponentChildren
}

/** Something that must be answered before going on. Escape closes it; the focus goes back where it was. */
export function Dialog({ open, heading, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const d = dialog.current
    if (open && d && !d.open) d.showModal()
    if (!open && d?.open) d.close()
  }, [open])
  return (
    <dialog ref={dialog} aria-labelledby={id} onClose={onClose}>
      {open && (
        <>
          <h2 id={id}>{heading}</h2>
          {children}
        </>
      )}
    </dialog>
  )
}
