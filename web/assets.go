package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"path"
)

//go:embed assets
var assetFiles embed.FS

// assetHash names the assets as a set. One hash for all of them lets a script
// import its neighbour by a relative address, and any change renames them all.
var assetHash = hashAssets()

var contentTypes = map[string]string{
	".css": "text/css; charset=utf-8",
	".js":  "text/javascript; charset=utf-8",
	".svg": "image/svg+xml",
}

func hashAssets() string {
	h := sha256.New()
	err := fs.WalkDir(assetFiles, "assets", func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := assetFiles.ReadFile(file)
		h.Write([]byte(file))
		h.Write(b)
		return err
	})
	if err != nil {
		panic("web: " + err.Error()) // embedded files can be read
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}

// AssetURL is the address of an asset such as "base.css". The address changes
// with the content, so that what stands there may be cached for good.
func AssetURL(name string) string { return "/assets/" + assetHash + "/" + name }

// Asset returns what stands at /assets/hash/name. It is not ok for a name that
// does not exist, nor for a hash of another build.
func Asset(hash, name string) (body []byte, contentType string, ok bool) {
	contentType, ok = contentTypes[path.Ext(name)]
	if hash != assetHash || !ok {
		return nil, "", false
	}
	body, err := assetFiles.ReadFile("assets/" + name)
	if err != nil {
		return nil, "", false
	}
	return body, contentType, true
}
