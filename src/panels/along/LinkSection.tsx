import { useEffect, useState } from 'react';
import { useCommitted } from '../../store/react';
import type { FileActions, MadeLink } from '../fileActions';
import { later } from '../later';

const QrCode = later(
  () => import('./QrCode'),
  (module) => module.QrCode,
  { place: 'The QR code' },
);

const grouped = (count: number) => count.toLocaleString('en-GB').replaceAll(',', '\u202f');

/** The whole aircraft as a link, with its length, and as a QR code. */
export function LinkSection({ files }: { readonly files: FileActions }) {
  const aircraft = useCommitted((committed) => committed);
  const [link, setLink] = useState<MadeLink | string | null>(null);
  const [showsCode, setShowsCode] = useState(false);
  useEffect(() => {
    let gone = false;
    files.makeLink(window.location.href).then(
      (made) => !gone && setLink(made),
      () => !gone && setLink('The link could not be made: the server has stopped or is out of reach.'),
    );
    return () => {
      gone = true;
    };
  }, [files, aircraft]);
  if (link === null) return <p className="hint">Packing …</p>;
  if (typeof link === 'string') return <p>{link}</p>;
  const characters = link.address.length;
  if (characters > link.longest) return <p>{tooLong(characters, link.longest)}</p>;
  return (
    <>
      <p>
        The whole aircraft is in the link itself; no server sees it. Whoever opens it has it beside their own
        work. <span data-fact="link-length">{grouped(characters)}</span> of at most {grouped(link.longest)}{' '}
        characters{characters > MAIL_CARRIES ? '; some mail and chat programs cut links of that length' : ''}.
      </p>
      {aircraft.traces && <p className="hint">The drawings under its views are not in the link.</p>}
      {isThisMachine(window.location.hostname) && (
        <p className="hint">
          This page was started on this machine, so the link opens only here. For another machine save a file.
        </p>
      )}
      <p className="along-row">
        <CopyButton text={link.address} />
        <button
          type="button"
          className="button"
          aria-expanded={showsCode}
          onClick={() => setShowsCode(!showsCode)}
        >
          QR code
        </button>
      </p>
      {showsCode && <QrCode front={link.codeFront} digits={link.codeDigits} />}
    </>
  );
}

/** Programs are asked to take so many characters (RFC 9110, section 4.1); many take no more. */
const MAIL_CARRIES = 8000;

const tooLong = (characters: number, longest: number) =>
  `This aircraft makes a link of ${grouped(characters)} characters, and browsers carry no more than about ${grouped(longest)} everywhere. Save it as a file instead.`;

const isThisMachine = (host: string) => ['localhost', '127.0.0.1', '[::1]'].includes(host);

function CopyButton({ text }: { readonly text: string }) {
  const [said, setSaid] = useState<string | null>(null);
  const copy = async () => {
    const done = await navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    );
    setSaid(done ? 'Copied' : null);
    if (!done) setSaid('refused');
  };
  return (
    <>
      <button type="button" className="button strong" onClick={() => void copy()}>
        {said === 'Copied' ? 'Copied' : 'Copy the link'}
      </button>
      {said === 'refused' && (
        <label className="along-by-hand">
          The browser does not let the page copy. Copy it by hand:
          <input readOnly value={text} onFocus={(event) => event.target.select()} />
        </label>
      )}
    </>
  );
}
