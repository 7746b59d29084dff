/**
 * What each formula's table shows first, as a link says it. Read when the site is built; the page carries it beside the
 * formula's name. Ranges are those of a small studio.
 */
const f = 'f/1.4;f/2;f/2.8;f/4;f/5.6;f/8;f/11';
const lenses = '35mm;50mm;85mm;105mm;135mm';
const near = '1m..4m..0.2m';

export const suggested: Readonly<Record<string, string>> = {
  'angle-of-view': `down=focal-length&across=results&show=horizontal;vertical;diagonal&focal-length=${lenses}`,
  'framing-distance': `down=frame-height&across=focal-length&show=subject-distance&frame-height=0.4m..1.6m..0.1m&focal-length=${lenses}`,
  'frame-size': `down=subject-distance&across=focal-length&show=frame-height&subject-distance=${near}&focal-length=${lenses}`,
  perspective:
    'down=subject-distance&across=depth&show=ratio&subject-distance=0.6m..4m..0.2m&depth=0.05m;0.1m;0.15m;0.2m',
  'backdrop-coverage': `down=subject-distance&across=backdrop-distance&show=view-width&subject-distance=${near}&backdrop-distance=0.5m..2.5m..0.5m`,
  'room-fit':
    'down=room-length&across=frame-height&show=longest-focal-length&room-length=3m..8m..0.5m&frame-height=0.5m;0.7m;0.9m;1.2m;1.5m',
  'spotter-reach':
    'down=frame-width&across=child-offset&show=gap&frame-width=0.4m..1.2m..0.1m&child-offset=0m..0.3m..0.1m',
  equivalence: `down=focal-length&across=to-format&show=equivalent-focal-length&focal-length=${lenses}&to-format=36x24;23.6x15.8;22.3x14.9;17.3x13;44x33`,
  'f-stop': `down=from&across=to&show=stops&from=${f}&to=${f}`,
  'circle-of-confusion':
    'down=format&across=viewing-distance&show=circle&format=36x24;23.6x15.8;22.3x14.9;17.3x13;13.2x8.8;44x33;4x5in&viewing-distance=25cm;40cm;60cm;100cm',
  'depth-of-field': `down=subject-distance&across=f-number&show=total&subject-distance=${near}&f-number=${f}`,
  'face-in-focus': `down=subject-distance&across=f-number&show=spare&subject-distance=${near}&f-number=${f}`,
  'background-blur': `down=backdrop-distance&across=f-number&show=frame-share&backdrop-distance=0.5m..4m..0.5m&f-number=${f}`,
  'recompose-error':
    'down=angle&across=subject-distance&show=focus-error&angle=2deg..20deg..2deg&subject-distance=1m..3m..0.5m',
  'exposure-value': `down=shutter&across=f-number&show=ev&shutter=1/500s;1/250s;1/200s;1/160s;1/125s;1/60s;1/30s;1/15s&f-number=${f}`,
  'ambient-exposure':
    'down=illuminance&across=iso&show=correct-shutter&illuminance=10lx;20lx;50lx;100lx;200lx;500lx;1000lx;2000lx;5000lx&iso=100;200;400;800;1600',
  'movement-blur':
    'down=speed&across=shutter&show=ambient-blur&speed=0.25m/s;0.5m/s;1m/s;1.5m/s;2m/s;3m/s&shutter=1/60s;1/125s;1/160s;1/200s;1/250s',
  diffraction:
    'down=f-number&across=results&show=airy-diameter;circles;pixels&f-number=f/2.8;f/4;f/5.6;f/8;f/11;f/16;f/22',
  falloff: 'down=near&across=far&show=stops&near=0.5m..2m..0.25m&far=1m..3m..0.5m',
  'extended-source':
    'down=distance&across=width&show=error&distance=0.25m;0.5m;0.75m;1m;1.5m;2m;3m&width=0.3m;0.6m;0.9m;1.2m;1.5m',
  'flash-exposure':
    'down=distance&across=wanted-f-number&show=power-needed&distance=0.8m..3m..0.2m&wanted-f-number=f/2.8;f/4;f/5.6;f/8;f/11',
  softness:
    'down=distance&across=source-width&show=edge-width&distance=0.5m;0.75m;1m;1.25m;1.5m;2m;3m&source-width=0.3m;0.6m;0.9m;1.2m;1.5m',
  'light-on-face':
    'down=key-azimuth&across=key-elevation&show=plane-stops&key-azimuth=0deg..90deg..15deg&key-elevation=0deg..60deg..15deg',
  'lighting-ratio':
    'down=key&across=fill&show=ratio&key=f/4;f/5.6;f/8;f/11;f/16&fill=f/2;f/2.8;f/4;f/5.6;f/8',
  'room-fill':
    'down=room-length&across=reflectance&show=under-key&room-length=3m..8m..0.5m&reflectance=0.2;0.4;0.6;0.7;0.8',
  'fill-card':
    'down=distance&across=size&show=under-key&distance=0.3m..1.2m..0.1m&size=0.5m;0.75m;1m;1.5m;2m',
  'beam-spread':
    'down=distance&across=angle&show=width&distance=1m..4m..0.25m&angle=10deg;20deg;30deg;40deg;70deg',
  'backdrop-exposure':
    'down=light-distance&across=light-stops&show=against-face&light-distance=1m..3m..0.25m&light-stops=-2stop..2stop..1stop',
  gel: 'down=source&across=gel-shift&show=temperature&source=2700K;3200K;4000K;5000K;5500K;6500K;7500K&gel-shift=-131mired;-68mired;-35mired;35mired;68mired;131mired',
  'rim-light':
    'down=light-behind&across=light-height&show=over-key&light-behind=0.6m..2m..0.2m&light-height=0.3m..1.5m..0.3m',
  feathering:
    'down=aim&across=beam-angle&show=after&aim=0deg..60deg..10deg&beam-angle=20deg;40deg;60deg;90deg;120deg',
  'print-size':
    'down=wanted-resolution&across=results&show=largest-width;largest-height&wanted-resolution=150px/in;180px/in;200px/in;240px/in;300px/in;360px/in',
  'viewing-distance':
    'down=viewing-distance&across=results&show=resolution;least-width;least-height&viewing-distance=30cm..150cm..15cm',
  'wrap-allowance':
    'down=edge-depth&across=results&show=file-width;file-height;file-pixel-width;file-pixel-height&edge-depth=10mm;15mm;20mm;30mm;40mm;50mm',
  'stand-stability':
    'down=boom-length&across=ballast&show=tipping-pull&boom-length=0m..1.5m..0.3m&ballast=0kg..20kg..5kg',
  'platform-drop':
    'down=platform-height&across=results&show=foot-speed;head-speed&platform-height=0.1m..0.6m..0.1m',
  'mains-load':
    'down=load&across=voltage&show=current&load=500W..4000W..500W&voltage=100V;120V;230V',
  'recycle-budget':
    'down=frame-rate&across=recycle-time&show=wait&frame-rate=20/min..120/min..20/min&recycle-time=0.3s;0.6s;1s;1.5s;2s',
  'break-even':
    'down=sitting-fee&across=no-shows&show=bookings&sitting-fee=20..120..20&no-shows=0%25;5%25;10%25;15%25;20%25;30%25',
};
