"""Independent reference: plain nested sums by Gauss-Legendre and trapezoids, fine, checked against finer."""
import math, sys, json
import numpy as np
from scipy.special import log_ndtr, ndtr
GL = {n: np.polynomial.legendre.leggauss(n) for n in (10, 16)}
def panels(lo, hi, k, n=10):
    x, w = GL[n]
    e = np.linspace(lo, hi, k + 1); h = (e[1:] - e[:-1]) / 2; m = (e[1:] + e[:-1]) / 2
    return (m[:, None] + h[:, None] * x).ravel(), (h[:, None] * w).ravel()
def levelled(a, c, e):
    a = np.asarray(a, float)
    if c <= e: return np.maximum(0, a - e)
    with np.errstate(divide='ignore'):
        soft = c * np.log(np.maximum(a, e) / e)
    return np.where(a <= c, soft, a - c + c * math.log(c / e))
def chance(z, f=1.0):
    M = z['mean'] - z['reserve']; sd, cv, n = z['sd'], z['cv'], z['spots']
    if z['sd_se'] > 0:
        scale = max(sd, math.sqrt(2) * z['sd_se']); df = max(1.0, .5 * (scale / z['sd_se']) ** 2)
        u = 1 / math.sqrt(2 * df)
        # ln(scale / sigma) = r
        lo, hi = -max(9.5 * u, 33 / df if df < 40 else 0), math.log1p(9.5 * u)
        r = np.linspace(lo, hi, int(f * max(160, min(1000, (hi - lo) / .03))))
        ws = np.exp(df * (r + .5 - .5 * np.exp(2 * r))); ws /= ws.sum()
        sig = scale * np.exp(-r)
        k = ws > 1e-17; sig, ws = sig[k], ws[k]
        samp = min(z['mean_se'], scale / math.sqrt(z['readings'])) if z['readings'] > 0 else 0
        oth = math.sqrt(max(0, z['mean_se'] ** 2 - samp ** 2))
        e = np.hypot(oth, samp * sig / scale)
    else:
        sig, ws, e = np.array([sd]), np.array([1.0]), np.array([z['mean_se']])
    if z['mean_se'] > 0:
        zm, wm = panels(-9, 9, int(16 * f)); wm = wm * np.exp(-zm * zm / 2) / math.sqrt(2 * math.pi)
    else: zm, wm = np.zeros(1), np.ones(1)
    W = ws[:, None] * wm
    A = M + e[:, None] * zm
    keep = W > 1e-19
    A, W, S = A[keep], W[keep], (sig[:, None] + 0 * zm)[keep]
    # mean beyond the resolution of zm where e >> s is seen by comparing with finer
    def F(x):
        out = np.empty(len(x))
        for i, xx in enumerate(x):
            s = np.hypot(S, cv * xx)
            out[i] = (W * -np.expm1(n * log_ndtr((A - xx) / s))).sum()
        return out
    D = z['depth']; k = math.log(z['factor']) if z['peel'] > 0 else 0
    if k == 0: return float(F([D])[0])
    a, c, en = z['peel'] / 2, z['critical'], z['residual'] / 2
    R = float(levelled(a, c, en))
    X = lambda q: levelled(a * np.exp(k * q), c, en) - R
    zf = math.log(en / a) / k
    # where depth reaches 0
    if D - R < 0:
        lo, hi = -40., 10.
        for _ in range(80):
            m = (lo + hi) / 2
            if D + X(m) > 0: hi = m
            else: lo = m
        zf = max(zf, lo)
    zf = min(max(zf, -9.), 9.)
    out = float(ndtr(zf) * F([max(0., D - R)])[0]) if zf > -9 else 0.
    cuts = [zf, 9.]
    zc = math.log(c / a) / k if c > en else zf
    if zf < zc < 9: cuts.insert(1, zc)
    for lo, hi in zip(cuts, cuts[1:]):
        q, w = panels(lo, hi, max(2, int(f * z.get('np', 20) * (hi - lo) / 18 + 1)))
        w = w * np.exp(-q * q / 2) / math.sqrt(2 * math.pi)
        kk = w > 1e-17
        if kk.any():
            out += float((w[kk] * F(np.maximum(0, D + X(q[kk])))).sum())
    return out
def draw(g):
    lu = lambda a, b: a * (b / a) ** g.random()
    while True:
        z = dict(mean=lu(30, 250), sd=lu(.4, 12), cv=g.uniform(0, .5) if g.random() < .8 else 0., reserve=g.uniform(0, 20),
                 spots=max(1., math.floor(lu(.5, 3e4))) if g.random() < .9 else lu(1, 1e9), readings=0., sd_se=0., mean_se=0., peel=0., factor=1., critical=0., residual=lu(.2, 5))
        kind = g.random()
        if kind < .55:
            nr = float(round(lu(3, 50))); z['readings'] = nr; z['sd_se'] = z['sd'] / math.sqrt(2 * (nr - 1))
            z['mean_se'] = math.hypot(z['sd'] / math.sqrt(nr), g.uniform(0, 5) if g.random() < .6 else 0)
        elif kind < .85: z['mean_se'] = lu(.2, .1 * z['mean'])
        elif kind < .9: z['sd_se'] = z['sd'] * g.uniform(.05, .5); z['mean_se'] = lu(.2, 5) if g.random() < .5 else 0.
        if g.random() < .65:
            z['peel'] = lu(3, 60); z['factor'] = lu(1.02, 3); z['critical'] = 0. if g.random() < .5 else lu(.05, 30)
        if z['mean_se'] or z['sd_se'] or z['peel']: pass
        else: continue
        target = lu(1e-10, .5)
        co = dict(z); co['np'] = 6
        lo, hi = 0., z['mean'] - z['reserve']
        if hi <= 0: continue
        co['depth'] = 0.
        if chance(co, .4) > target: continue
        for _ in range(9):
            co['depth'] = (lo + hi) / 2
            if chance(co, .4) > target: hi = co['depth']
            else: lo = co['depth']
        z['depth'] = lo + (hi - lo) * g.random()
        return z
def sure(z):
    last = None; z = dict(z)
    for np_, f in ((20, 1.), (40, 1.4), (80, 2), (320, 2.4), (1280, 2.8)):
        z['np'] = np_
        p = chance(z, f)
        if last is not None and abs(p - last) < 2e-6 * abs(p): return p
        last = p
    return None
if __name__ == '__main__':
    g = np.random.default_rng(int(sys.argv[1]))
    with open(sys.argv[3], 'w') as out:
        for i in range(int(sys.argv[2])):
            z = draw(g); p = sure(z)
            if p is None: print('unresolved', z, flush=True); continue
            if not 1e-10 <= p <= .5: continue
            out.write(' '.join(repr(float(v)) for v in (z['depth'], z['mean'], z['sd'], z['cv'], z['reserve'], z['spots'], z['mean_se'], z['sd_se'], z['readings'], z['peel'], z['factor'], z['critical'], z['residual'], p)) + '\n'); out.flush()
