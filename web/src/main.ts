import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import './base.css';
import './drawing.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { look } from './look.svelte';

look.apply();
mount(App, { target: document.getElementById('app')! });
