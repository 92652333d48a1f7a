import { Canvas } from '@react-three/fiber';
import { type ReactNode, useState } from 'react';
import { createRoot } from 'react-dom/client';

// What a scene of plain boxes costs when one of them is dragged and nothing else follows: the other side of the bench.

declare global {
  interface Window {
    /** Moves the one box; set once it is there. */
    moveBox?: (xMm: number) => void;
  }
}

const COUNT = Number(new URLSearchParams(window.location.search).get('boxes') ?? 20);

function Box({ at }: { readonly at: readonly [number, number, number] }): ReactNode {
  return (
    <mesh position={[...at]}>
      <boxGeometry args={[20, 15, 10]} />
      <meshStandardMaterial color="orange" />
    </mesh>
  );
}

function DraggedBox(): ReactNode {
  const [x, setX] = useState(0);
  window.moveBox = setX;
  return <Box at={[x, 0, 0]} />;
}

function Boxes(): ReactNode {
  return Array.from({ length: COUNT - 1 }, (_, i) => (
    <Box key={i} at={[(i % 40) * 25 - 500, ((i * 7) % 11) * 30 - 150, ((i * 3) % 5) * 12]} />
  ));
}

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');
createRoot(root).render(
  <Canvas frameloop="demand" camera={{ position: [0, 0, 900], far: 5000 }}>
    <ambientLight />
    <directionalLight position={[1, 2, 3]} />
    <Boxes />
    <DraggedBox />
  </Canvas>,
);
