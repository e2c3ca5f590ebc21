/** The shop's logo: a picture that goes into the catalog's own file. */
import { useState } from 'react'
import { FilePick } from '../../ui/file-picker.tsx'
import type { EditorWord } from '../../words/catalog-editor.ts'
import type { TextNode } from '../form/node.ts'
import { useEditor, useWords } from './context.ts'
import { type FieldProps, useFaults } from './field.tsx'

/** As data a picture takes a third more; the schema takes 400,000 letters. */
const MOST = 290_000
const PICTURE = /^data:image\/(?:png|jpeg);base64,/

export function LogoField({ path, value, node }: FieldProps<TextNode>) {
  const { store } = useEditor()
  const { t, label, hint } = useWords()
  const faults = useFaults(path)
  const [wrong, setWrong] = useState<EditorWord | null>(null)
  const take = async (file: File): Promise<void> => {
    setWrong(null)
    const data = file.size > MOST ? null : await dataOf(file)
    if (data && PICTURE.test(data)) store.getState().set(path, data)
    else setWrong(file.size > MOST ? 'logo.large' : 'logo.wrong')
  }
  return (
    <div className="cell wide" data-path={path.join('/')}>
      <span className="name">{label(path)}</span>
      {typeof value === 'string' && PICTURE.test(value) && (
        <img className="logo" src={value} alt={t('logo.alt')} />
      )}
      <div className="actions">
        <FilePick label={t('logo.choose')} accept=".png,.jpg,.jpeg,image/png,image/jpeg" take={take} />
        {value !== undefined && (
          <button type="button" onClick={() => store.getState().set(path, undefined)}>
            {t('logo.remove')}
          </button>
        )}
      </div>
      <p className="hint">{hint(node.says)}</p>
      {wrong && <p className="fault">{t(wrong)}</p>}
      {faults.length > 0 && <p className="fault">{faults.map(({ message }) => message).join('. ')}</p>}
    </div>
  )
}

const dataOf = (file: File): Promise<string | null> =>
  new Promise((done) => {
    const reader = new FileReader()
    reader.onload = () => done(typeof reader.result === 'string' ? reader.result : null)
    reader.onerror = () => done(null)
    reader.readAsDataURL(file)
  })
