package main

import (
	"context"
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"onphrase/samples"
)

var drawAnew = flag.Bool("picture", false, "draw the picture of the README anew")

// The picture of the README, kept out of the program, and how large it may be
// [bytes].
const (
	pictureFile = "../../samples/page.png"
	mostPicture = 150_000
)

// The picture of the README is the page of the demo class, its desk and its
// stage on a phone, as the program writes it. It is made by
//
//	go test ./cmd/onphrase -run ReadmePicture -picture
func TestReadmePicture(t *testing.T) {
	if *drawAnew {
		drawReadme(t)
	}
	info, err := os.Stat(pictureFile)
	if err != nil {
		t.Fatalf("%v; make it with -picture", err)
	}
	if info.Size() > mostPicture {
		t.Errorf("%s has %d bytes, more than %d", pictureFile, info.Size(), mostPicture)
	}
	f, err := os.Open(pictureFile)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := png.DecodeConfig(f); err != nil {
		t.Error(err)
	}
	_ = fs.WalkDir(samples.Demo(), ".", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || strings.HasSuffix(path, ".png") {
			t.Errorf("%s is part of the program: %v", path, err)
		}
		return nil
	})
}

func drawReadme(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("NOT DRAWN: chromium is not on the PATH; apt install chromium")
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, samples.Demo()); err != nil {
		t.Fatal(err)
	}
	page := filepath.Join(dir, "class.html")
	s := &streams{in: strings.NewReader(""), out: os.Stderr, err: os.Stderr, width: defaultWidth}
	if code := run(context.Background(), []string{"map", filepath.Join(dir, "class.yaml"), "-f", "page", "-o", page},
		s); code != exitClean {
		t.Fatalf("exit code %d", code)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	ctx, end := chromedp.NewExecAllocator(ctx, append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(browser), chromedp.NoSandbox, chromedp.WSURLReadTimeout(3*time.Minute))...)
	defer end()
	ctx, endTab := chromedp.NewContext(ctx)
	defer endTab()
	const height, gap = 844, 24
	desk := shot(ctx, t, page+"#desk", 1100, height, `document.querySelectorAll("#desk .part")[1].scrollIntoView(); ""`)
	stage := shot(ctx, t, page+"#stage", 390, height, `const leg = document.getElementById("leg"); leg.value = "2"; leg.dispatchEvent(new Event("change"));
		for (let i = 0; i < 113; i++) document.body.dispatchEvent(new KeyboardEvent("keydown", {key: "ArrowRight", bubbles: true})); ""`)
	all := image.NewPaletted(image.Rect(0, 0, 1100+gap+390, height), shades())
	draw.Draw(all, all.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(all, desk.Bounds(), desk, image.Point{}, draw.Src)
	draw.Draw(all, stage.Bounds().Add(image.Pt(1100+gap, 0)), stage, image.Point{}, draw.Src)
	f, err := os.Create(pictureFile)
	if err == nil {
		err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(f, all)
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
}

// shot is a picture of a page after a script.
func shot(ctx context.Context, t *testing.T, file string, w, h int64, script string) image.Image {
	t.Helper()
	err := chromedp.Do(ctx, chromedp.EmulateViewport(w, h), chromedp.Navigate("about:blank"),
		chromedp.Navigate("file://"+file))
	if err == nil {
		_, err = chromedp.Run(ctx, chromedp.Evaluate[string]("{"+script+"}", chromedp.EvalAwaitPromise))
	}
	if err == nil {
		_, err = chromedp.Run(ctx, chromedp.Evaluate[float64]("new Promise(done => setTimeout(done, 500, 1))",
			chromedp.EvalAwaitPromise))
	}
	if err != nil {
		t.Fatal(err)
	}
	src, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(strings.NewReader(string(src)))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// shades are all the colours of the page: from paper to ink.
func shades() color.Palette {
	const steps = 31
	paper, ink := [3]int{0xf8, 0xf6, 0xef}, [3]int{0x16, 0x14, 0x0f}
	p := color.Palette{color.White}
	for i := range steps {
		mix := func(k int) uint8 { return uint8(paper[k] + (ink[k]-paper[k])*i/(steps-1)) }
		p = append(p, color.RGBA{mix(0), mix(1), mix(2), 0xff})
	}
	return p
}
