import { Title } from '@mantine/core';

/** The frame around every screen. */
export function App() {
  return (
    <main>
      <Title order={1}>Trunnion</Title>
    </main>
  );
}
