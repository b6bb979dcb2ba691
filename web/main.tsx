import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import '@fontsource-variable/atkinson-hyperlegible-next/index.css';
import './theme.css';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
