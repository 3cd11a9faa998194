import { render } from 'preact';
import { App } from './app.tsx';
import './styles/base.css';
import './styles/layout.css';
import './styles/form.css';
import './styles/verdict.css';
import './styles/results.css';
import './styles/day.css';
import './styles/advice.css';
import './styles/pictures.css';
import './styles/sites.css';
import './styles/sheet.css';
import './styles/year.css';
import './styles/session.css';
import './styles/tour.css';
import './styles/print.css';
import { startTheme } from './theme.ts';

// Before the first paint, or it would flicker.
startTheme();

const root = document.getElementById('app');
if (root) render(<App />, root);
