import { useState } from 'preact/hooks';
import { chooseTheme, THEME_CHOICES, type ThemeChoice, themeChoice } from './theme.ts';

const LABELS: Record<ThemeChoice, string> = {
  device: 'As the device says',
  light: 'Light',
  sunlight: 'Sunlight',
};

export function ThemeSwitch() {
  const [choice, setChoice] = useState(themeChoice);
  return (
    <label class="theme-switch">
      Theme
      <select
        value={choice}
        onChange={({ currentTarget }) => {
          const chosen = currentTarget.value as ThemeChoice;
          chooseTheme(chosen);
          setChoice(chosen);
        }}
      >
        {THEME_CHOICES.map((one) => (
          <option key={one} value={one}>
            {LABELS[one]}
          </option>
        ))}
      </select>
    </label>
  );
}
