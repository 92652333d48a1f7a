import './lessons.css';
import { type DragEvent, useContext, useEffect, useState } from 'react';
import { type LessonProgress, NOT_BEGUN } from '../../store/lessonProgress';
import type { Piece } from '../../store/piece';
import { usePiece } from '../../store/react';
import { FilesContext } from '../filesContext';
import type { LessonActions, LessonOpened } from '../lessonActions';
import { NotFetched } from '../trouble/NotFetched';
import { FaultyLesson } from './FaultyLesson';
import { LessonList } from './LessonList';
import { LessonPage } from './LessonPage';

/** The lessons: their list, or the one that is open. */
export function Lessons() {
  const files = useContext(FilesContext);
  return files ? <Fetched piece={files.lessons} /> : null;
}

function Fetched({ piece }: { readonly piece: Piece<LessonActions> }) {
  const { piece: actions, failure } = usePiece(piece);
  if (failure) return <NotFetched place="The lessons" onRetry={piece.retry} />;
  return actions ? <Room actions={actions} /> : <main className="place lessons" />;
}

type Faulty = Extract<LessonOpened, { readonly fileName: string }>;

function Room({ actions }: { readonly actions: LessonActions }) {
  const [list, setList] = useState(actions.list);
  const [kept, setKept] = useState(actions.readProgress);
  const [openKey, setOpenKey] = useState(() => actions.here() ?? '');
  const [faulty, setFaulty] = useState<Faulty | null>(null);
  const [notKept, setNotKept] = useState<string | null>(null);
  /** Counts the files taken in, so that one opened again is another lesson than the one it replaces. */
  const [taken, setTaken] = useState(0);
  useEffect(() => {
    actions.noteHere(openKey);
    return () => actions.noteHere(null);
  }, [actions, openKey]);

  const keep = (key: string, progress: LessonProgress) => {
    const all = { ...kept.progress, [key]: progress };
    setKept({ progress: all, fault: actions.keepProgress(all) });
  };
  const take = (opened: LessonOpened) => {
    if (!opened.ok) {
      if ('fileName' in opened) setFaulty(opened);
      return;
    }
    setFaulty(null);
    if (opened.isNew) keep(opened.key, NOT_BEGUN);
    setTaken(taken + 1);
    setNotKept(opened.notKept);
    setList(actions.list());
    setOpenKey(opened.key);
  };
  const openFile = async () => take(await actions.openFile());
  const drop = {
    onDragOver: (event: DragEvent) => {
      if (!event.dataTransfer.types.includes('Files')) return;
      event.preventDefault();
      event.stopPropagation();
    },
    onDrop: async (event: DragEvent) => {
      if (!event.dataTransfer.types.includes('Files')) return;
      event.preventDefault();
      event.stopPropagation();
      take(await actions.openDropped(event.dataTransfer.files));
    },
  };
  const at = list.lessons.findIndex(({ key }) => key === openKey);
  const listed = list.lessons[at];
  const after = list.lessons[at + 1];
  const faults = [list.fault, kept.fault, notKept].filter((fault) => fault !== null);

  return (
    <div className="lessons-room" {...drop}>
      {listed ? (
        <LessonPage
          key={`${listed.key} ${taken}`}
          listed={listed}
          progress={kept.progress[listed.key] ?? NOT_BEGUN}
          onProgress={(progress) => keep(listed.key, progress)}
          onLeave={() => setOpenKey('')}
          next={
            after && after.isOwn === listed.isOwn
              ? { title: after.lesson.title, open: () => setOpenKey(after.key) }
              : null
          }
        />
      ) : (
        <main className="place lessons" data-testid="lessons">
          <LessonList
            lessons={list.lessons}
            progress={kept.progress}
            onOpen={setOpenKey}
            onOpenFile={() => void openFile()}
            onRemove={(key) => {
              setNotKept(actions.removeOwn(key));
              setList(actions.list());
            }}
          />
        </main>
      )}
      {faults.length > 0 && (
        <p className="lessons-faults" role="status">
          {faults.join(' ')}
        </p>
      )}
      {faulty && <FaultyLesson faulty={faulty} onClose={() => setFaulty(null)} />}
    </div>
  );
}
