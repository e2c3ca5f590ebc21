/** A button that opens a file of soundings. */
import { FilePick } from '../ui/file-picker.tsx'
import { useWords } from '../ui/use-words.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'

const ACCEPT =
  '.csv,.tsv,.txt,.gpx,.geojson,.json,text/csv,text/plain,application/gpx+xml,application/geo+json'

interface Props {
  readonly take: (text: string) => void
  readonly failed: () => void
}

export function OpenFile({ take, failed }: Props) {
  const { t } = useWords(SOUNDINGS_FILE)
  return <FilePick label={t('open')} accept={ACCEPT} take={(file) => file.text().then(take, failed)} />
}
